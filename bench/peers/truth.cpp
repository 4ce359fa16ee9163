// Reference answers: Gragg-Bulirsch-Stoer extrapolation (order 2*COLS) at fixed small steps in 80-bit
// long double; apex and landing are found by re-stepping with a Newton-corrected step (no interpolation).
// usage: truth IN.csv OUT.csv [H seconds] [columns]
#include "flight.hpp"
using T = long double;
using namespace fl;
static Par<T> P;
static int COLS = 9;
static void gbs(const State<T>& y0, T H, State<T>& out) {
  static State<T> tab[16];
  State<T> d0;
  rhs_raw<T>(y0, d0, P);
  for (int j = 0; j < COLS; ++j) {
    const int n = 2 * (j + 1);
    const T h = H / n;
    State<T> a = y0, b, d;
    for (int i = 0; i < 7; ++i) b[i] = y0[i] + h * d0[i];
    for (int m = 1; m < n; ++m) {
      rhs_raw<T>(b, d, P);
      for (int i = 0; i < 7; ++i) {
        T t = a[i] + 2 * h * d[i];
        a[i] = b[i];
        b[i] = t;
      }
    }
    rhs_raw<T>(b, d, P);
    State<T> row;
    for (int i = 0; i < 7; ++i) row[i] = (a[i] + b[i] + h * d[i]) / 2;
    // Aitken-Neville in h^2: old[m] = T(j-1,m) -> cur[m] = T(j,m)
    State<T> cur = row;
    for (int m = 1; m <= j; ++m) {
      const T r = T(n) / T(2 * (j - m + 1)), f = r * r - 1;
      State<T> nx;
      for (int i = 0; i < 7; ++i) nx[i] = cur[i] + (cur[i] - tab[m - 1][i]) / f;
      tab[m - 1] = cur;
      cur = nx;
    }
    tab[j] = cur;
  }
  out = tab[COLS - 1];
}
int main(int c, char** v) {
  auto in = read_inputs(v[1]);
  T H = c > 3 ? strtold(v[3], nullptr) : 0.05L;
  if (c > 4) COLS = atoi(v[4]);
  FILE* f = std::fopen(v[2], "w");
  std::fprintf(f,
               "id,speed_mps,launch_deg,spin_rpm,tilt_deg,wind_x_mps,wind_z_mps,carry_x_m,carry_z_m,apex_m,"
               "time_s,landing_deg\n");
  T maxS = 0;
  for (size_t k = 0; k < in.size(); ++k) {
    State<T> y, n, d;
    setup<T>(in[k], y, P);
    T t = 0, apex = 0;
    for (;;) {
      gbs(y, H, n);
      {
        T ux = n[3] - P.wx, uz = n[5] - P.wz;
        T S = RAD * n[6] / sqrtl(ux * ux + n[4] * n[4] + uz * uz);
        if (S > maxS) maxS = S;
      }
      if (y[4] > 0 && n[4] <= 0) {
        T h = H * y[4] / (y[4] - n[4]);
        State<T> q;
        for (int it = 0; it < 12; ++it) {
          gbs(y, h, q);
          rhs_raw<T>(q, d, P);
          T dh = -q[4] / d[4];
          h += dh;
          if (fabsl(dh) < 1e-17L) break;
        }
        gbs(y, h, q);
        apex = q[1];
      }
      if (n[1] < 0 && n[4] < 0) {
        T h = H * y[1] / (y[1] - n[1]);
        State<T> q;
        for (int it = 0; it < 12; ++it) {
          gbs(y, h, q);
          T dh = -q[1] / q[4];
          h += dh;
          if (fabsl(dh) < 1e-17L) break;
        }
        gbs(y, h, n);
        t += h;
        break;
      }
      y = n;
      t += H;
    }
    T ang = atan2l(-n[4], sqrtl(n[3] * n[3] + n[5] * n[5])) * 180 / (T)PI;
    const Launch& l = in[k];
    std::fprintf(f, "%zu,%.3f,%.3f,%.1f,%.3f,%.3f,%.3f,%.11Lf,%.11Lf,%.11Lf,%.12Lf,%.11Lf\n", k, l.speed,
                 l.launch, l.spin, l.tilt, l.wx, l.wz, n[0], n[2], apex, t, ang);
  }
  std::fclose(f);
  std::fprintf(stderr, "largest S seen at a step end: %.3Lf\n", maxS);
}
