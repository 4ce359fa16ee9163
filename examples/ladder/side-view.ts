import { sum } from 'd3-array';
import { pathOf, type Shot } from 'fairflight';
import {
  axes,
  CHART_WIDTH,
  frame,
  type KeyEntry,
  key,
  line,
  mark,
  NARROW,
  type Point,
  svg,
  type TextStyle,
  text,
} from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { INK, MUTED, textColour } from '../lib/palette.js';
import { fixed } from '../lib/text.js';
import type { Rung } from './rungs.js';

/** Heights are drawn larger than distances, so that flat flights can be told apart. */
export const EXAGGERATION = 2;
/** Room for the three lines of text beside a rung. */
const LEAST_HEIGHT = 62;
const AIR_ABOVE = 14;
/** Room for that text left of the flights. */
const GUTTER = 186;

/** Each band's flight on a rung of its own, fastest on top, with the best-loft flight behind it. */
export function sideView(
  rungs: readonly Rung[],
  colours: readonly string[],
  display: Display,
  width: number = CHART_WIDTH,
): string {
  // On a narrow chart the text stands above the flights instead of beside them.
  const narrow = width < NARROW;
  const gutter = narrow ? 12 : GUTTER;
  const { distance } = display;
  const shots = rungs.flatMap(({ model, loft }) => [model, ...(loft ? [loft.optimum.shot] : [])]);
  const reach = distance.of(Math.max(...shots.map(({ total }) => total)));
  const domain = Math.ceil((reach * 1.02) / 25) * 25;
  const margin = { left: gutter, right: 16, top: 22, bottom: 46 };
  const perUnit = (width - margin.left - margin.right) / domain;
  const perMetre = EXAGGERATION * perUnit * distance.of(1);
  const heights = rungs.map(({ model, loft }) => {
    const apex = Math.max(model.flight.apex, loft?.optimum.shot.flight.apex ?? 0);
    const flight = apex * perMetre + AIR_ABOVE;
    return narrow ? flight + LEAST_HEIGHT : Math.max(LEAST_HEIGHT, flight);
  });
  const whole = sum(heights);
  const f = frame({
    width,
    height: margin.top + whole + margin.bottom,
    x: { label: `distance (${distance.unit})`, domain: [0, domain], ticks: 7 },
    y: { label: '', domain: [0, whole], ticks: 0 },
    margin,
  });
  let base = 0;
  const layers = rungs.map((rung, i) => {
    const ground = base;
    const top = ground + (heights[i] ?? 0);
    base = top;
    const at = (metres: number, up: number): Point => [distance.of(metres), ground + up * perMetre];
    return rungLayer(rung, colours[i] ?? INK, at, narrow ? top - LEAST_HEIGHT : ground);
  });

  function rungLayer(
    { model, loft, estimates, name }: Rung,
    colour: string,
    at: (metres: number, up: number) => Point,
    foot: number,
  ): string {
    const best = loft?.optimum.shot;
    const parts = [line(f, [at(0, 0), [domain, at(0, 0)[1]]], { colour: MUTED, width: 0.8 })];
    if (best !== undefined) {
      parts.push(line(f, flightLine(best, at), { colour: MUTED, width: 1.6, dash: '6 4' }));
      parts.push(mark(f, at(best.carry, 0), 'diamond', MUTED, 3.4, 'carry at the best loft'));
    }
    parts.push(line(f, flightLine(model, at), { colour, width: 2.6 }));
    parts.push(line(f, [at(model.carry, 0), at(model.total, 0)], { colour, width: 2.6, dash: '1.5 4' }));
    parts.push(mark(f, at(model.carry, 0), 'dot', colour, 4, 'carry worked out'));
    if (estimates.carry !== undefined) {
      parts.push(mark(f, at(estimates.carry.mean, 0), 'ring', colour, 4.6, 'carry measured'));
    }
    const beside = (words: string, dy: number, style: TextStyle): string =>
      text(f, [0, foot], words, { dx: 8 - gutter, dy, size: 11.5, ...style });
    parts.push(beside(name, -37, { weight: 'bold', colour: textColour(colour), size: 14 }));
    parts.push(beside(`now  ${shotWords(model, display)}`, -21, {}));
    if (best !== undefined) parts.push(beside(`best  ${shotWords(best, display)}`, -6, { colour: MUTED }));
    return parts.join('');
  }

  const entries: KeyEntry[] = [
    { name: 'flight now', colour: INK, mark: 'line' },
    { name: 'flight at the best loft', colour: MUTED, mark: 'dashes' },
    { name: 'run', colour: INK, mark: 'dots' },
    { name: 'carry worked out', colour: INK, mark: 'dot' },
    { name: 'measured', colour: INK, mark: 'ring' },
    { name: 'at the best loft', colour: MUTED, mark: 'diamond' },
  ];
  const columns = text(f, [0, whole], 'carry, apex, descent', {
    dx: 8 - gutter,
    dy: -8,
    size: 11.5,
    colour: MUTED,
  });
  return key(entries) + svg(f, 'Side view of the flights, one rung a speed', axes(f), columns, ...layers);
}

function shotWords({ carry, flight }: Shot, { distance, height, angle }: Display): string {
  return `${fixed(distance.of(carry))} ${distance.unit}, ${fixed(height.of(flight.apex))} ${height.unit}, ${fixed(angle.of(flight.descentAngle))}°`;
}

function flightLine(shot: Shot, at: (metres: number, up: number) => Point): readonly Point[] {
  return pathOf(shot.flight, { count: 60 }).map(({ position }) =>
    at(Math.hypot(position.x, position.z), position.y),
  );
}
