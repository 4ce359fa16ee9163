// Shared by the JavaScript peers: inputs, right-hand side, interleaved timing, table of errors.
import { readFileSync } from 'node:fs';

const RHO = 1.225;
const MU = 1.81e-5;
const MASS = 0.04593;
const RAD = 0.021335;
const G = 9.80665;
const KSPIN = 2e-5;
const C = (RHO * Math.PI * RAD * RAD) / (2 * MASS);

const count = { rhs: 0 };
/** Parameters of the flight in progress. */
const P = { wx: 0, wz: 0, ay: 0, az: 1 };

export function load(path) {
  const lines = readFileSync(path, 'utf8').trim().split('\n').slice(1);
  return lines.map((line) => {
    const [, speed, launch, spin, tilt, wx, wz, x, z, apex, time, angle] = line.split(',').map(Number);
    return { speed, launch, spin, tilt, wx, wz, x, z, apex, time, angle };
  });
}

export function setup(l, y) {
  const a = (l.launch * Math.PI) / 180;
  const t = (l.tilt * Math.PI) / 180;
  P.wx = l.wx;
  P.wz = l.wz;
  P.ay = -Math.sin(t);
  P.az = Math.cos(t);
  y[0] = 0;
  y[1] = 0;
  y[2] = 0;
  y[3] = l.speed * Math.cos(a);
  y[4] = l.speed * Math.sin(a);
  y[5] = 0;
  y[6] = (l.spin * 2 * Math.PI) / 60;
  return y;
}

export function rhs(s, d) {
  count.rhs++;
  const ux = s[3] - P.wx;
  const uy = s[4];
  const uz = s[5] - P.wz;
  const U = Math.sqrt(ux * ux + uy * uy + uz * uz);
  const S = (RAD * s[6]) / U;
  const CD = 0.24 + 0.18 * S + 0.06 * Math.sin((Math.PI * ((RHO * U * 2 * RAD) / MU - 90000)) / 200000);
  const CL = 0.54 * S ** 0.4;
  const lx = P.ay * uz - P.az * uy;
  const ly = P.az * ux;
  const lz = -P.ay * ux;
  const L = (C * CL * U * U) / Math.sqrt(lx * lx + ly * ly + lz * lz);
  const D = C * CD * U;
  d[0] = s[3];
  d[1] = s[4];
  d[2] = s[5];
  d[3] = L * lx - D * ux;
  d[4] = L * ly - D * uy - G;
  d[5] = L * lz - D * uz;
  d[6] = (-KSPIN * s[6] * U) / RAD;
  return d;
}

export function finish(r, y, t) {
  r.x = y[0];
  r.z = y[2];
  r.time = t;
  r.angle = (Math.atan2(-y[4], Math.hypot(y[3], y[5])) * 180) / Math.PI;
}

/** Bracketed root by regula falsi with the Illinois rule, to about 1e-12 s. */
export function root(f, a, b, fa, fb) {
  for (let i = 0; i < 60 && Math.abs(b - a) > 1e-12; i++) {
    const m = (a * fb - b * fa) / (fb - fa);
    const fm = f(m);
    if (fm === 0) return m;
    if (fm > 0 === fb > 0) fa *= 0.5;
    else {
      a = b;
      fa = fb;
    }
    if (Math.abs(m - b) < 1e-12) return m;
    b = m;
    fb = fm;
  }
  return b;
}

function median(values) {
  const s = [...values].sort((p, q) => p - q);
  const n = s.length;
  return n % 2 ? s[n >> 1] : (s[n / 2 - 1] + s[n / 2]) / 2;
}

/** Processor time spent on warming up, as in our own programs [µs]. */
const WARM_UP = 1e6;

/**
 * Times the entries in turn, `rounds` times after warming up, and prints the table.
 * An entry is { name, setting, run(launch, result), every? }; `every` n flies each n-th flight only.
 */
export function bench(entries, reference, rounds) {
  const runs = entries.map((entry) => {
    const flights = reference.filter((_, i) => i % (entry.every ?? 1) === 0);
    const results = flights.map(() => ({ x: 0, z: 0, apex: 0, time: 0 }));
    return { entry, flights, results, times: [], rhs: 0 };
  });
  // Processor time, garbage collection included: other programs on the machine do not count.
  const flyAll = ({ entry, flights, results }) => {
    const start = process.cpuUsage();
    for (let i = 0; i < flights.length; i++) entry.run(flights[i], results[i]);
    const { user, system } = process.cpuUsage(start);
    return user + system;
  };
  for (let spent = 0; spent < WARM_UP; ) for (const run of runs) spent += flyAll(run);
  for (let round = 0; round < rounds; round++) {
    for (const run of runs) {
      count.rhs = 0;
      run.times.push(flyAll(run) / run.flights.length);
      run.rhs = count.rhs / run.flights.length;
    }
  }
  console.log(
    'method,setting,flights,us_per_flight,median_error_m,worst_error_m,apex_error_m,time_error_s,force_calls',
  );
  for (const { entry, flights, results, times, rhs: calls } of runs) {
    const worst = (key) => Math.max(...results.map((r, i) => Math.abs(r[key] - flights[i][key])));
    const errors = results.map((r, i) => Math.hypot(r.x - flights[i].x, r.z - flights[i].z));
    const landing = errors.map((e) => (Number.isFinite(e) ? e : 1e9));
    const figures = [median(landing), Math.max(...landing), worst('apex'), worst('time')];
    console.log(
      [
        entry.name,
        entry.setting,
        flights.length,
        median(times).toFixed(4),
        ...figures.map((figure) => figure.toExponential(3)),
        calls.toFixed(1),
      ].join(','),
    );
  }
}
