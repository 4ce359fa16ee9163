// The work item: one golf-ball flight as a 7-state initial value problem. See README.md.
#pragma once
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>
namespace fl {
constexpr double RHO = 1.225, MU = 1.81e-5, MASS = 0.04593, RAD = 0.021335, G = 9.80665, KSPIN = 2e-5;
constexpr double PI = 3.14159265358979323846;
template <class T>
using State = std::array<T, 7>;  // x y z vx vy vz omega ; y is up, z to the right
struct Launch {
  double speed, launch, spin, tilt, wx, wz;
};
struct Result {
  double x = 0, z = 0, apex = 0, time = 0, angle = 0;
};
struct Truth {
  double x, z, apex, time, angle;
};
// parameters that stay fixed in one flight
template <class T>
struct Par {
  T wx, wz, ax, ay, az;
};
template <class T>
inline void setup(const Launch& l, State<T>& s, Par<T>& p) {
  const T d = T(PI) / T(180);
  const T a = T(l.launch) * d, t = T(l.tilt) * d;
  s = {T(0),
       T(0),
       T(0),
       T(l.speed) * std::cos(a),
       T(l.speed) * std::sin(a),
       T(0),
       T(l.spin) * T(2) * T(PI) / T(60)};
  p = {T(l.wx), T(l.wz), T(0), -std::sin(t), std::cos(t)};
}
template <class T, class Y, class D>
inline void rhs_raw(const Y& s, D&& d, const Par<T>& p) {
  const T c = T(RHO) * T(PI) * T(RAD) * T(RAD) / (T(2) * T(MASS));
  const T ux = s[3] - p.wx, uy = s[4], uz = s[5] - p.wz;
  const T U = std::sqrt(ux * ux + uy * uy + uz * uz);
  const T Re = T(RHO) * U * T(2) * T(RAD) / T(MU);
  const T S = T(RAD) * s[6] / U;
  const T CD = T(0.24) + T(0.18) * S + T(0.06) * std::sin(T(PI) * (Re - T(90000)) / T(200000));
  const T CL = T(0.54) * std::pow(S, T(0.4));
  const T lx = p.ay * uz - p.az * uy, ly = p.az * ux - p.ax * uz, lz = p.ax * uy - p.ay * ux;
  const T L = c * CL * U * U / std::sqrt(lx * lx + ly * ly + lz * lz);
  const T D_ = c * CD * U;
  d[0] = s[3];
  d[1] = s[4];
  d[2] = s[5];
  d[3] = L * lx - D_ * ux;
  d[4] = L * ly - D_ * uy - T(G);
  d[5] = L * lz - D_ * uz;
  d[6] = -T(KSPIN) * s[6] * U / T(RAD);
}
inline double landing_angle(double vx, double vy, double vz) {
  return std::atan2(-vy, std::sqrt(vx * vx + vz * vz)) * 180 / PI;
}
inline std::vector<Launch> read_inputs(const char* path, std::vector<Truth>* truth = nullptr) {
  std::vector<Launch> v;
  FILE* f = std::fopen(path, "r");
  if (!f) {
    std::perror(path);
    std::exit(1);
  }
  char line[512];
  if (!std::fgets(line, sizeof line, f)) std::exit(1);
  while (std::fgets(line, sizeof line, f)) {
    double q[12];
    int n = 0;
    char* e = line;
    std::strtod(e, &e);
    while (*e == ',' && n < 12) {
      q[n++] = std::strtod(e + 1, &e);
    }
    if (n < 6) continue;
    v.push_back({q[0], q[1], q[2], q[3], q[4], q[5]});
    if (truth && n >= 11) truth->push_back({q[6], q[7], q[8], q[9], q[10]});
  }
  std::fclose(f);
  return v;
}
}  // namespace fl
