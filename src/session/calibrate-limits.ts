import { balls } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import { squareStrike } from '../strike/impact.js';
import { createStriker } from '../strike/striker.js';
import { si, toDegrees } from '../units/index.js';
import type { CalibratedValue } from './calibration.js';

const NAMES = {
  restitution: 'restitution',
  tangentialRestitution: 'tangential restitution',
  dragScale: 'drag scale',
  liftScale: 'lift scale',
} as const;

interface Stage {
  readonly name: 'strike' | 'flight';
  readonly used: number;
  readonly misread: number;
  readonly assumed: readonly {
    readonly reading: 'attackAngle' | 'dynamicLoft';
    readonly shots: number;
    readonly sd: number;
  }[];
}

/** What a calibration cannot tell apart, in sentences. @internal */
export function limitsOf(
  values: readonly CalibratedValue[],
  correlation: readonly (readonly number[])[],
  head: Clubhead,
  stages: readonly Stage[],
): readonly string[] {
  const sentences = stages
    .filter(({ used, misread }) => misread > 0.4 * used)
    .map(
      ({ name, used, misread }) =>
        `${misread} of ${used} shots do not fit any ${name} these models can give and had no say: check units, club and scene before anything else.`,
    );
  for (const { used, assumed } of stages) {
    for (const { reading, shots, sd } of assumed) {
      const usual = reading === 'attackAngle' ? 'Attack angle' : 'Dynamic loft';
      sentences.push(
        `${usual} was not measured in ${shots} of ${used} shots and taken to be usual for the club, give or take ${toDegrees(si(sd)).toFixed(1)}°: that doubt is in the standard errors of the strike.`,
      );
    }
  }
  for (const { target, value } of values) {
    if (target === 'restitution') {
      sentences.push(
        `Restitution and a club speed that always reads off look the same: 1 % of club speed is ${((1 + value) / 100).toFixed(3)} of restitution. So do head mass and a ball that is livelier or duller.`,
      );
    } else if (target === 'tangentialRestitution') {
      const change = gripPerMillimetre(head);
      const worth = change === undefined ? '' : `: 1 mm higher strikes are ${change.toFixed(3)} less`;
      sentences.push(
        `Tangential restitution and a strike height or a height of the centre of gravity that is always off look the same${worth}. So does spin that always reads off.`,
      );
    } else if (target === 'dragScale') {
      sentences.push(
        'Drag scale, air density, an overlooked wind along the line and a ball speed that always reads off look nearly the same.',
      );
    } else {
      sentences.push(
        'Lift scale, a spin that always reads off and a launch angle that always reads off look nearly the same.',
      );
    }
  }
  values.forEach((a, i) => {
    values.slice(i + 1).forEach((b, k) => {
      const rho = correlation[i]?.[i + 1 + k] ?? 0;
      if (Math.abs(rho) <= 0.8) return;
      const more =
        a.target === 'dragScale' ? ' Apex and descent angle beside carry would tell them apart.' : '';
      sentences.push(
        `These shots hardly tell ${NAMES[a.target]} from ${NAMES[b.target]} (correlation ${rho.toFixed(2)}).${more}`,
      );
    });
  });
  for (const { target, mostlyPrior, atBound } of values) {
    if (mostlyPrior)
      sentences.push(`These shots say little about the ${NAMES[target]}: it is mostly what was assumed.`);
    if (atBound) {
      sentences.push(
        `The ${NAMES[target]} ended on its bound: something else is wrong, units or scene most likely.`,
      );
    }
  }
  return sentences;
}

/**
 * Change of tangential restitution that changes spin as much as a strike 1 mm higher, for a usual drive; undefined
 * where this head gives no such strike, or the grip has no say in it.
 */
function gripPerMillimetre(head: Clubhead): number | undefined {
  const striker = createStriker({ clubhead: head, ball: balls.conforming });
  const usual = striker.laws.grip;
  const input = squareStrike(45, 0, head.staticLoft);
  const spin = (grip: number, high: number): number => {
    striker.laws.grip = grip;
    input.high = high;
    const struck = striker.strike(input);
    return typeof struck === 'string' ? Number.NaN : struck.backspin;
  };
  const byHeight = spin(usual, 0.0005) - spin(usual, -0.0005);
  const byGrip = spin(usual + 0.01, 0) - spin(usual - 0.01, 0);
  const change = Math.abs((byHeight / byGrip) * 0.02);
  return Number.isFinite(change) ? change : undefined;
}
