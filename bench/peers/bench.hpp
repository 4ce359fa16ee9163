// Shared timing loop: every entry runs the whole input set once per round, rounds interleave the entries.
#pragma once
#include <algorithm>
#include <ctime>
#include <functional>
#include "flight.hpp"
namespace fl {
inline long NF = 0;  // right-hand-side evaluations
struct Entry {
  std::string name, tol;
  std::function<void(const std::vector<Launch>&, std::vector<Result>&)> run;
};
// Processor time, so that other programs on the machine do not count.
inline double now() {
  timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}
inline double median(std::vector<double> v) {
  std::sort(v.begin(), v.end());
  size_t n = v.size();
  return n % 2 ? v[n / 2] : 0.5 * (v[n / 2 - 1] + v[n / 2]);
}
inline void bench(std::vector<Entry>& es, const std::vector<Launch>& in, const std::vector<Truth>& tr,
                  int rounds) {
  std::vector<std::vector<double>> t(es.size());
  std::vector<std::vector<Result>> out(es.size(), std::vector<Result>(in.size()));
  std::vector<long> nf(es.size());
  for (int r = 0; r < rounds; ++r)
    for (size_t e = 0; e < es.size(); ++e) {
      NF = 0;
      double a = now();
      es[e].run(in, out[e]);
      t[e].push_back((now() - a) * 1e6 / in.size());
      nf[e] = NF;
    }
  std::printf(
      "method,setting,flights,us_per_flight,median_error_m,worst_error_m,apex_error_m,time_error_s,"
      "force_calls\n");
  for (size_t e = 0; e < es.size(); ++e) {
    std::vector<double> er;
    double ea = 0, et = 0;
    for (size_t i = 0; i < in.size(); ++i) {
      const Result& q = out[e][i];
      double d = std::hypot(q.x - tr[i].x, q.z - tr[i].z);
      er.push_back(std::isfinite(d) ? d : 1e9);
      ea = std::max(ea, std::fabs(q.apex - tr[i].apex));
      et = std::max(et, std::fabs(q.time - tr[i].time));
    }
    std::printf("%s,%s,%zu,%.4f,%.3e,%.3e,%.3e,%.3e,%.1f\n", es[e].name.c_str(), es[e].tol.c_str(), in.size(),
                median(t[e]), median(er), *std::max_element(er.begin(), er.end()), ea, et,
                double(nf[e]) / in.size());
  }
}
}  // namespace fl
