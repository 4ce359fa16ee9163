// Library peers in C++: Boost.odeint, SUNDIALS CVODE, GSL.
// usage: cpp_peers REFERENCE.csv ROUNDS, or cpp_peers --versions
#include "bench.hpp"
#include <boost/numeric/odeint.hpp>
#include <boost/version.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_version.h>
#include <sundials/sundials_config.h>
namespace oi = boost::numeric::odeint;
using namespace fl;
using S7 = State<double>;
static Par<double> P;
struct Rhs {
  void operator()(const S7& s, S7& d, double) const {
    ++NF;
    rhs_raw<double>(s, d, P);
  }
};
static void finish(Result& r, const S7& s, double t) {
  r.x = s[0];
  r.z = s[2];
  r.time = t;
  r.angle = landing_angle(s[3], s[4], s[5]);
}
template <class F>
double root(F f, double a, double b, double fa, double fb) {  // bracketed, to about 1e-12 s
  boost::uintmax_t it = 60;
  auto q = boost::math::tools::toms748_solve(
      f, a, b, fa, fb, [](double x, double y) { return std::fabs(x - y) < 1e-12; }, it);
  return 0.5 * (q.first + q.second);
}
// steppers with a continuous extension
template <class Stepper>
void odeint_dense(Stepper st, const std::vector<Launch>& in, std::vector<Result>& out) {
  for (size_t k = 0; k < in.size(); ++k) {
    S7 s;
    setup<double>(in[k], s, P);
    st.initialize(s, 0.0, 0.1);
    Result r;
    double vy0 = s[4], y0 = 0;
    for (;;) {
      auto iv = st.do_step(Rhs());
      const S7& n = st.current_state();
      S7 q;
      if (vy0 > 0 && n[4] <= 0) {
        double t = n[4] == 0 ? iv.second
                             : root(
                                   [&](double t) {
                                     st.calc_state(t, q);
                                     return q[4];
                                   },
                                   iv.first, iv.second, vy0, n[4]);
        st.calc_state(t, q);
        r.apex = q[1];
      }
      if (n[1] < 0 && n[4] < 0) {
        double a = iv.first, fa = y0;
        if (y0 <= 0) {
          S7 w;
          a = iv.first + 0.5 * (iv.second - iv.first);
          st.calc_state(a, w);
          fa = w[1];
        }
        double t = root(
            [&](double t) {
              st.calc_state(t, q);
              return q[1];
            },
            a, iv.second, fa, n[1]);
        st.calc_state(t, q);
        finish(r, q, t);
        break;
      }
      y0 = n[1];
      vy0 = n[4];
    }
    out[k] = r;
  }
}
// Event by re-stepping from the last accepted point (for steppers with no continuous extension): start from
// the cubic Hermite root, one or two Newton re-steps, and the last tiny correction (|dh| < 5e-4 s) by a
// 2nd-order Taylor move.
template <class Step, class Fun>
double restep(Step step, Fun fd, const S7& a, const S7& b, double H, int comp, S7& q) {
  S7 da, db;
  fd(a, da);
  fd(b, db);
  double lo = 0, hi = 1;
  auto her = [&](double x) {
    double y0 = a[comp], y1 = b[comp], m0 = H * da[comp], m1 = H * db[comp];
    return ((2 * x - 3) * x * x + 1) * y0 + ((x - 2) * x + 1) * x * m0 + (3 - 2 * x) * x * x * y1 +
           (x - 1) * x * x * m1;
  };
  for (int i = 0; i < 20; ++i) {
    double m = 0.5 * (lo + hi);
    if (her(m) > 0)
      lo = m;
    else
      hi = m;
  }
  double h = H * 0.5 * (lo + hi);
  for (int it = 0; it < 8; ++it) {
    step(a, h, q);
    S7 d;
    fd(q, d);
    double dh = -q[comp] / d[comp];
    if (std::fabs(dh) < 5e-4) {
      if (comp == 1) dh = -q[1] / (q[4] + 0.5 * d[4] * dh);
      for (int i = 0; i < 3; ++i) {
        q[i] += dh * (q[i + 3] + 0.5 * dh * d[i + 3]);
        q[i + 3] += dh * d[i + 3];
      }
      q[6] += dh * d[6];
      return h + dh;
    }
    h += dh;
  }
  return h;
}
static void odeint_f78(double tol, const std::vector<Launch>& in, std::vector<Result>& out) {
  typedef oi::runge_kutta_fehlberg78<S7> E;
  auto c = oi::make_controlled(tol, tol, E());
  E e;
  Rhs f;
  for (size_t k = 0; k < in.size(); ++k) {
    S7 s, n, q;
    setup<double>(in[k], s, P);
    Result r;
    double t = 0, h = 0.1;
    auto step = [&](const S7& a, double hh, S7& o) { e.do_step(f, a, 0.0, o, hh); };
    auto fd = [&](const S7& a, S7& d) { f(a, d, 0.0); };
    for (;;) {
      n = s;
      double t0 = t;
      while (c.try_step(f, n, t, h) == oi::fail) {}
      const double H = t - t0;
      if (s[4] > 0 && n[4] <= 0) {
        restep(step, fd, s, n, H, 4, q);
        r.apex = q[1];
      }
      if (n[1] < 0 && n[4] < 0) {
        double hh = restep(step, fd, s, n, H, 1, q);
        finish(r, q, t0 + hh);
        break;
      }
      s = n;
    }
    out[k] = r;
  }
}
static int gsl_f(double, const double* y, double* d, void*) {
  ++NF;
  rhs_raw<double>(y, d, P);
  return GSL_SUCCESS;
}
static void gsl_run(const gsl_odeiv2_step_type* T, double tol, const std::vector<Launch>& in,
                    std::vector<Result>& out) {
  gsl_odeiv2_step *st = gsl_odeiv2_step_alloc(T, 7), *st2 = gsl_odeiv2_step_alloc(T, 7);
  gsl_odeiv2_control* c = gsl_odeiv2_control_y_new(tol, tol);
  gsl_odeiv2_evolve* ev = gsl_odeiv2_evolve_alloc(7);
  gsl_odeiv2_system sys = {gsl_f, nullptr, 7, nullptr};
  for (size_t k = 0; k < in.size(); ++k) {
    S7 s, n, q;
    setup<double>(in[k], s, P);
    Result r;
    double t = 0, h = 0.1;
    gsl_odeiv2_evolve_reset(ev);
    gsl_odeiv2_step_reset(st);
    auto step = [&](const S7& a, double hh, S7& o) {
      o = a;
      double er[7];
      gsl_odeiv2_step_apply(st2, 0, hh, o.data(), er, nullptr, nullptr, &sys);
    };
    auto fd = [&](const S7& a, S7& d) { gsl_f(0, a.data(), d.data(), nullptr); };
    for (;;) {
      n = s;
      double t0 = t;
      gsl_odeiv2_evolve_apply(ev, c, st, &sys, &t, 60.0, &h, n.data());
      const double H = t - t0;
      if (s[4] > 0 && n[4] <= 0) {
        restep(step, fd, s, n, H, 4, q);
        r.apex = q[1];
      }
      if (n[1] < 0 && n[4] < 0) {
        double hh = restep(step, fd, s, n, H, 1, q);
        finish(r, q, t0 + hh);
        break;
      }
      s = n;
    }
    out[k] = r;
  }
  gsl_odeiv2_evolve_free(ev);
  gsl_odeiv2_control_free(c);
  gsl_odeiv2_step_free(st);
  gsl_odeiv2_step_free(st2);
}
static int cv_f(sunrealtype, N_Vector y, N_Vector d, void*) {
  ++NF;
  const double* s = NV_DATA_S(y);
  double* o = NV_DATA_S(d);
  rhs_raw<double>(s, o, P);
  return 0;
}
static int cv_g(sunrealtype, N_Vector y, sunrealtype* g, void*) {
  g[0] = NV_DATA_S(y)[1];
  g[1] = NV_DATA_S(y)[4];
  return 0;
}
static void cvode_run(int lmm, double tol, const std::vector<Launch>& in, std::vector<Result>& out) {
  SUNContext ctx;
  SUNContext_Create(nullptr, &ctx);
  N_Vector y = N_VNew_Serial(7, ctx);
  void* m = CVodeCreate(lmm, ctx);
  S7 s;
  setup<double>(in[0], s, P);
  for (int i = 0; i < 7; ++i) NV_DATA_S(y)[i] = s[i];
  CVodeInit(m, cv_f, 0, y);
  CVodeSStolerances(m, tol, tol);
  SUNMatrix A = nullptr;
  SUNLinearSolver L = nullptr;
  SUNNonlinearSolver N = nullptr;
  if (lmm == CV_ADAMS) {
    N = SUNNonlinSol_FixedPoint(y, 0, ctx);
    CVodeSetNonlinearSolver(m, N);
  } else {
    A = SUNDenseMatrix(7, 7, ctx);
    L = SUNLinSol_Dense(y, A, ctx);
    CVodeSetLinearSolver(m, L, A);
  }
  CVodeRootInit(m, 2, cv_g);
  int dir[2] = {-1, -1};
  CVodeSetRootDirection(m, dir);
  CVodeSetMaxNumSteps(m, 100000);
  CVodeSetNoInactiveRootWarn(m);
  for (size_t k = 0; k < in.size(); ++k) {
    setup<double>(in[k], s, P);
    for (int i = 0; i < 7; ++i) NV_DATA_S(y)[i] = s[i];
    CVodeReInit(m, 0, y);
    Result r;
    double t = 0;
    for (;;) {
      int rc = CVode(m, 60.0, y, &t, CV_NORMAL);
      if (rc != CV_ROOT_RETURN) {
        r.x = NAN;
        break;
      }
      int fnd[2];
      CVodeGetRootInfo(m, fnd);
      const double* q = NV_DATA_S(y);
      if (fnd[1]) r.apex = q[1];
      if (fnd[0] && t > 0.01) {
        S7 w;
        for (int i = 0; i < 7; ++i) w[i] = q[i];
        finish(r, w, t);
        break;
      }
    }
    out[k] = r;
  }
  N_VDestroy(y);
  CVodeFree(&m);
  if (N) SUNNonlinSolFree(N);
  if (L) SUNLinSolFree(L);
  if (A) SUNMatDestroy(A);
  SUNContext_Free(&ctx);
}
int main(int c, char** v) {
  if (c == 2 && std::string(v[1]) == "--versions") {
    std::printf("g++ %s, Boost %d.%d, SUNDIALS %s, GSL %s\n", __VERSION__, BOOST_VERSION / 100000,
                BOOST_VERSION / 100 % 1000, SUNDIALS_VERSION, GSL_VERSION);
    return 0;
  }
  std::vector<Truth> tr;
  auto in = read_inputs(v[1], &tr);
  int rounds = c > 2 ? atoi(v[2]) : 5;
  std::vector<Entry> es;
  using VL = const std::vector<Launch>&;
  using VR = std::vector<Result>&;
  for (int p = 2; p <= 10; ++p) {
    double tol = std::pow(10.0, -p);
    std::string n = "1e-" + std::to_string(p);
    es.push_back({"odeint dopri5 dense", n, [tol](VL a, VR b) {
                    odeint_dense(oi::make_dense_output(tol, tol, oi::runge_kutta_dopri5<S7>()), a, b);
                  }});
    es.push_back({"odeint fehlberg78", n, [tol](VL a, VR b) { odeint_f78(tol, a, b); }});
    if (p >= 4)
      es.push_back({"odeint bulirsch_stoer dense", n, [tol](VL a, VR b) {
                      odeint_dense(oi::bulirsch_stoer_dense_out<S7>(tol, tol, 1.0, 1.0), a, b);
                    }});
    es.push_back({"GSL rk8pd", n, [tol](VL a, VR b) { gsl_run(gsl_odeiv2_step_rk8pd, tol, a, b); }});
    es.push_back({"GSL rkf45", n, [tol](VL a, VR b) { gsl_run(gsl_odeiv2_step_rkf45, tol, a, b); }});
    es.push_back({"CVODE Adams", n, [tol](VL a, VR b) { cvode_run(CV_ADAMS, tol, a, b); }});
    if (p >= 4) es.push_back({"CVODE BDF", n, [tol](VL a, VR b) { cvode_run(CV_BDF, tol, a, b); }});
  }
  bench(es, in, tr, rounds);
}
