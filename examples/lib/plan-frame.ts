import { CHART_WIDTH, type Frame, frame, heightForEqualScales, NARROW } from './chart.js';
import { fixed } from './text.js';

/** Least ratio of width to height; a narrow one may be nearly square. */
const WIDEST_SHAPE = 1.6;
const NARROW_SHAPE = 1.15;

/**
 * A plotting area seen from above, both directions at one scale: along the target line to the right, the right-hand side
 * below. A wide scatter widens the distances shown rather than the height.
 */
export function planFrame(
  from: number,
  to: number,
  side: number,
  unit: string,
  width: number = CHART_WIDTH,
): Frame {
  const missing = Math.max(0, 2 * side * (width < NARROW ? NARROW_SHAPE : WIDEST_SHAPE) - (to - from)) / 2;
  const spec = {
    width,
    x: {
      label: `distance along the target line (${unit})`,
      domain: [Math.floor(from - missing), Math.ceil(to + missing)] as const,
      ticks: 9,
    },
    y: {
      label: `side (${unit})`,
      domain: [-side, side] as const,
      ticks: 7,
      format: (value: number) => fixed(Math.abs(value)),
    },
  };
  // Looking along the flight from left to right, the right-hand side is below: the axis runs downward.
  return frame({ ...spec, height: heightForEqualScales(spec), y: { ...spec.y, domain: [side, -side] } });
}
