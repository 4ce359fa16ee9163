// Library peers in JavaScript, one library to a process: in a shared process the right-hand side would see several
// kinds of array, and some libraries would look two to three times slower than they are.
// usage: node js_peers.mjs REFERENCE.csv ROUNDS NAME_PREFIX
import { createRequire } from 'node:module';
import { bench, finish, load, rhs, root, setup } from './bench.mjs';

const require = createRequire(import.meta.url);
const TOLERANCES = [1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9];
const APEX = 4;
const GROUND = 1;

/** Adapters by the first letters of the rows they make; each loads its own library. */
const libraries = {
  'odex 2': odex2,
  'odex 3': odex3,
  dopri,
  numeric,
  'ode45-cash-karp': cashKarp,
  mathjs,
  'ode-rk4': rk4,
};

const [, , path, rounds, prefix] = process.argv;
bench(libraries[prefix](), load(path), Number(rounds));

function atTolerances(name, run, least = 0, every = 1) {
  return TOLERANCES.filter((tol) => tol >= least).map((tol) => ({
    name,
    setting: tol.toExponential(0),
    every,
    run: run(tol),
  }));
}

/** Notes the apex and the landing in a step with dense output at(component, t); true when landed. */
function noteEvents(r, t0, t1, y0, y1, at) {
  if (y0[4] > 0 && y1[4] <= 0)
    r.apex = at(
      1,
      root((t) => at(4, t), t0, t1, y0[4], y1[4]),
    );
  if (!(y1[1] < 0 && y1[4] < 0)) return false;
  let a = t0;
  let fa = y0[1];
  if (fa <= 0) {
    a = 0.5 * (t0 + t1);
    fa = at(1, a);
  }
  const t = root((x) => at(1, x), a, t1, fa, y1[1]);
  finish(
    r,
    [0, 1, 2, 3, 4, 5, 6].map((c) => at(c, t)),
    t,
  );
  return true;
}

/** Whether the step from y0 to y1 holds the event, for steppers without dense output. */
function holds(event, y0, y1) {
  return event === APEX ? y0[4] > 0 && y1[4] <= 0 : y1[1] < 0 && y1[4] < 0;
}

function odex2() {
  const { Solver } = require('odex');
  const f = (_t, y) => rhs(y, new Array(7));
  return atTolerances('odex 2.0.4 dense', (tol) => (l, r) => {
    const solver = new Solver(7);
    solver.denseOutput = true;
    solver.absoluteTolerance = tol;
    solver.relativeTolerance = tol;
    solver.initialStepSize = 0.1;
    let previous = setup(l, new Array(7));
    solver.solve(f, 0, previous, 60, (_n, x0, x1, y, at) => {
      if (at && noteEvents(r, x0, x1, previous, y, at)) return false;
      previous = y;
    });
  });
}

function odex3() {
  const { Solver } = require('odex3');
  const f = (_t, y, d) => {
    rhs(y, d);
  };
  return atTolerances('odex 3.0.0-rc.4 raw dense', (tol) => (l, r) => {
    const solver = new Solver(f, 7, {
      rawFunction: true,
      denseOutput: true,
      absoluteTolerance: tol,
      relativeTolerance: tol,
      initialStepSize: 0.1,
    });
    const y0 = setup(l, new Array(7));
    let previous = y0;
    for (const q of solver.solutionSegments(0, y0, 60)) {
      if (noteEvents(r, q.x0, q.x1, previous, q.y, q.f)) break;
      previous = q.y.slice();
    }
  });
}

/** No events: advanced one step at a time, by runs to just past the current time; the step's end is a private field. */
function dopri() {
  const { Dopri } = require('dopri');
  const f = (_t, y, d) => {
    rhs(y, d);
  };
  return atTolerances('dopri 0.0.13', (tol) => (l, r) => {
    const y0 = setup(l, new Array(7));
    const solver = new Dopri(f, 7, { atol: tol, rtol: tol });
    solver.initialise(0, y0);
    let t0 = 0;
    let previous = y0;
    for (;;) {
      const solution = solver.run(t0 + 1e-9);
      const t1 = solver._t;
      const y = solution([t1])[0];
      if (noteEvents(r, t0, t1, previous, y, (c, t) => solution([t])[0][c])) break;
      t0 = t1;
      previous = y;
    }
  });
}

function numeric() {
  const library = require('numeric');
  const f = (_t, y) => rhs(y, new Array(7));
  const run = (tol) => (l, r) => {
    const s = library.dopri(0, 20, setup(l, new Array(7)), f, tol, 100000, (_t, y) => -y[1]);
    const n = s.x.length - 1;
    finish(r, s.y[n], s.x[n]);
    for (let i = 0; i < n; i++) {
      const v0 = s.y[i][4];
      const v1 = s.y[i + 1][4];
      if (!(v0 > 0 && v1 <= 0)) continue;
      r.apex = s.at(root((t) => s.at(t)[4], s.x[i], s.x[i + 1], v0, v1))[1];
      break;
    }
  };
  return atTolerances('numeric 1.2.6 dopri', run, 1e-7);
}

/** No dense output: a second integrator lands on the event by Newton steps from the last accepted point. */
function cashKarp() {
  const integrator = require('ode45-cash-karp');
  const f = (d, y) => {
    rhs(y, d);
  };
  return atTolerances('ode45-cash-karp 1.1.0', (tol) => (l, r) => {
    const y = setup(l, new Float64Array(7));
    const options = { tol, verbose: false, errorScaleFunction: (_i, _dt, v) => 1 + Math.abs(v) };
    const main = integrator(y, f, 0, 0.1, options);
    const y0 = new Float64Array(7);
    const d = new Float64Array(7);
    for (;;) {
      y0.set(y);
      const t0 = main.t;
      main.step();
      const H = main.t - t0;
      for (const event of [APEX, GROUND]) {
        if (!holds(event, y0, y)) continue;
        let h = event === GROUND && y0[1] <= 0 ? H / 2 : (H * y0[event]) / (y0[event] - y[event]);
        const q = y0.slice();
        const onto = integrator(q, f, t0, h, options);
        for (let n = 0; n < 12; n++) {
          onto.dt = h;
          if (Math.abs(h) > 1e-9) onto.step(onto.t + h);
          rhs(q, d);
          h = -q[event] / d[event];
          if (Math.abs(h) < 1e-10) break;
        }
        if (event === GROUND) return finish(r, q, onto.t);
        r.apex = q[1];
      }
    }
  });
}

/** No events: solves past the landing, then again from the points before each event. Each 50th flight only. */
function mathjs() {
  const { create, solveODEDependencies } = require('mathjs');
  const math = create(solveODEDependencies);
  const f = (_t, y) => rhs(y, new Array(7));
  const run = (tol) => (l, r) => {
    const options = { tol, maxIter: 1e6, method: 'RK45', firstStep: 0.1 };
    const s = math.solveODE(f, [0, 12], setup(l, new Array(7)), options);
    let i = 1;
    for (const event of [APEX, GROUND]) {
      while (!(s.y[i][4] < 0 && (event === APEX || s.y[i][1] < 0))) i++;
      let t = s.t[i - 1];
      let q = s.y[i - 1];
      const H = s.t[i] - t;
      let h = event === GROUND && q[1] <= 0 ? H / 2 : (H * q[event]) / (q[event] - s.y[i][event]);
      for (let n = 0; n < 12; n++) {
        const w = math.solveODE(f, [t, t + h], q, { tol, method: 'RK45', firstStep: Math.abs(h) });
        t += h;
        q = w.y[w.y.length - 1];
        h = -q[event] / rhs(q, [])[event];
        if (Math.abs(h) < 1e-9) break;
      }
      if (event === APEX) r.apex = q[1];
      else {
        const d = rhs(q, []);
        for (let k = 0; k < 3; k++) q[k] += h * d[k];
        finish(r, q, t + h);
      }
    }
  };
  return atTolerances('mathjs 15.2.0 solveODE RK45', run, 1e-6, 50);
}

/** Fixed steps, no dense output: as the Cash-Karp peer. */
function rk4() {
  const integrator = require('ode-rk4');
  const f = (d, y) => {
    rhs(y, d);
  };
  const run = (H) => (l, r) => {
    const y = setup(l, new Float64Array(7));
    const main = integrator(y, f, 0, H);
    const y0 = new Float64Array(7);
    const d = new Float64Array(7);
    for (;;) {
      y0.set(y);
      const t0 = main.t;
      main.step();
      for (const event of [APEX, GROUND]) {
        if (!holds(event, y0, y)) continue;
        let h = event === GROUND && y0[1] <= 0 ? H / 2 : (H * y0[event]) / (y0[event] - y[event]);
        const q = y0.slice();
        const onto = integrator(q, f, t0, h);
        for (let n = 0; n < 12; n++) {
          onto.dt = h;
          onto.step();
          rhs(q, d);
          h = -q[event] / d[event];
          if (Math.abs(h) < 1e-10) break;
        }
        if (event === GROUND) return finish(r, q, onto.t);
        r.apex = q[1];
      }
    }
  };
  return [25, 50, 100, 200].map((n) => ({ name: 'ode-rk4 1.1.3', setting: `dt=${6 / n}`, run: run(6 / n) }));
}
