import { brent } from '../numerics/index.js';
import type { Scene } from '../scene/scene.js';
import { type Length, mph, type Speed, si, toMph } from '../units/index.js';
import { countingPlayer, monteCarlo } from './counting-player.js';
import { strokesSettings } from './expected-strokes.js';
import { type FasterOptions, type FasterQuestion, readFaster } from './faster-question.js';
import type { MonteCarlo } from './monte-carlo.js';
import { factorsAt } from './scatter-law.js';
import { type StrokesSurface, strokesCurve, strokesSurface } from './strokes-surface.js';

/** The player at one club speed. */
export interface SpeedStep {
  /** Club speed [m/s]. */
  readonly clubSpeed: Speed;
  /** Factor on today's scatter of path and face, by the law. */
  readonly directionFactor: number;
  /** Factor on today's scatter of the strike, by the law. */
  readonly strikeFactor: number;
  /** Mean carry [m]. */
  readonly carry: MonteCarlo<Length>;
  /** Mean total [m]. */
  readonly total: MonteCarlo<Length>;
  /** Share of fairways hit, averaged over the holes. */
  readonly fairway: number;
  /** Expected strokes on all holes given, together. */
  readonly strokes: MonteCarlo;
  /** The same less today's; its error is that of the difference, which is much smaller. */
  readonly change: MonteCarlo;
}

/** Scatter at which a speed is worth as much as today's. */
export interface BreakEven {
  /** Club speed [m/s]. */
  readonly clubSpeed: Speed;
  /**
   * Factor on today's scatter of path, face and strike at which the strokes equal today's; `under` or `over` the
   * range looked at when it lies beyond.
   */
  readonly factor: number | 'under' | 'over';
}

/** Where more speed stops paying. */
export type BestSpeed =
  /** Fewest strokes at this speed, between those looked at. */
  | { readonly kind: 'within'; readonly clubSpeed: Speed }
  /** More speed still pays at the fastest speed looked at. */
  | { readonly kind: 'faster-than'; readonly clubSpeed: Speed }
  /** Less speed pays already at the slowest speed looked at. */
  | { readonly kind: 'slower-than'; readonly clubSpeed: Speed };

/** Answer of {@link fasterOrStraighter}. */
export interface FasterOrStraighter {
  /** The player at each speed, slowest first, by the law of scatter. */
  readonly steps: readonly SpeedStep[];
  /** Club speed now [m/s]. */
  readonly now: Speed;
  /** Speed with the fewest strokes by the law. */
  readonly best: BestSpeed;
  /** Strokes on all holes that one mph more is worth now, by the law; negative numbers are fewer strokes. */
  readonly strokesPerMph: MonteCarlo;
  /** Strokes on all holes that 10 % less scatter of path, face and strike is worth at today's speed. */
  readonly strokesForTenPercentStraighter: MonteCarlo;
  /**
   * Growth of the scatter of path, face and strike a mph that cancels the gain of a mph, compounding: 0.02 is 2 %.
   * Negative where a mph more costs strokes even with the same scatter.
   */
  readonly cancellingGrowthPerMph: MonteCarlo;
  /** How far the smooth surface behind these answers is from the simulated strokes, root mean square. */
  readonly surfaceResidual: number;
  /** Trade-off: at each speed the scatter that leaves the strokes as they are. */
  readonly breakEven: readonly BreakEven[];
  /** The answer in a sentence. */
  readonly sentence: string;
}

/** Factors on scatter at which strokes are counted, and between which break-even is looked for. */
const FACTORS = [0.6, 1, 1.5, 2.2];

/**
 * Is it worth more to swing faster or to swing straighter? Plays the player's scattered shots at a row of club speeds
 * and scatters, and counts the strokes they come to on the holes given.
 *
 * Everything but club speed and scatter stays as it is: attack angle, loft, aim. Shots at different speeds use the same
 * random numbers, so that differences are known far better than the strokes themselves. Expected strokes are those of
 * {@link expectedStrokes}; for anyone but a professional they are modelled.
 * @param question - the player's usual delivery, scatter, holes, and how scatter changes with speed
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead, speeds, number of shots, seed, skill; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range`, also for a speed at which the ball would leave
 *   faster than a flight is computed for
 */
export function fasterOrStraighter(
  question: FasterQuestion,
  scene: Scene = {},
  options: FasterOptions = {},
): FasterOrStraighter {
  const {
    delivery,
    spread,
    holes,
    law,
    speeds,
    player: walker,
    options: given,
  } = readFaster(question, scene, options);
  const now = delivery.clubSpeed;
  const clouds = speeds.length * (1 + FACTORS.length) + 1;
  let done = 0;
  const player = countingPlayer(walker, delivery, spread, {
    holes,
    strokes: strokesSettings(given),
    cloud: given,
    onCloud: () => given.onProgress?.(Math.min(1, ++done / clouds)),
  });

  const today = player(now, 1, 1);
  const steps = speeds.map((clubSpeed) => {
    const { direction, strike } = factorsAt(law, now, clubSpeed);
    const there = clubSpeed === now ? today : player(clubSpeed, direction, strike);
    return {
      clubSpeed,
      directionFactor: direction,
      strikeFactor: strike,
      carry: there.carry,
      total: there.total,
      fairway: there.fairway,
      strokes: monteCarlo(there.strokes),
      change: monteCarlo(there.strokes.map((value, r) => value - (today.strokes[r] ?? 0))),
      replicates: there.strokes,
    };
  });
  const points = speeds.flatMap((clubSpeed) =>
    FACTORS.map((factor) => ({
      faster: toMph(si<Speed>(clubSpeed - now)),
      wider: Math.log(factor),
      strokes: (clubSpeed === now && factor === 1 ? today : player(clubSpeed, factor, factor)).strokes,
    })),
  );
  given.onProgress?.(1);
  const path = steps.map((step) => ({
    faster: toMph(si<Speed>(step.clubSpeed - now)),
    strokes: step.replicates,
  }));
  const curve = strokesCurve(path);
  const surface = strokesSurface(points);
  const result = {
    steps: steps.map(({ replicates: _, ...step }) => step),
    now,
    best: bestSpeed(curve.best, speeds, now),
    strokesPerMph: monteCarlo(curve.slopes),
    strokesForTenPercentStraighter: monteCarlo(
      surface.replicates.map((part) => part.at(0, Math.log(0.9)) - part.at(0, 0)),
    ),
    cancellingGrowthPerMph: monteCarlo(
      surface.replicates.map((part) => Math.expm1(-part.perMph / part.perWider)),
    ),
    surfaceResidual: surface.residual,
    breakEven: speeds.map((clubSpeed) => breakEvenAt(surface.all, clubSpeed, now)),
  };
  return { ...result, sentence: sentenceOn(result, holes.length) };
}

function bestSpeed(faster: number, speeds: readonly Speed[], now: Speed): BestSpeed {
  const [slowest = now, fastest = now] = [speeds[0], speeds.at(-1)];
  const best = si<Speed>(now + mph(1) * faster);
  if (best >= fastest) return { kind: 'faster-than', clubSpeed: fastest };
  if (best <= slowest) return { kind: 'slower-than', clubSpeed: slowest };
  return { kind: 'within', clubSpeed: best };
}

function breakEvenAt(surface: StrokesSurface, clubSpeed: Speed, now: Speed): BreakEven {
  const faster = toMph(si<Speed>(clubSpeed - now));
  const more = (wider: number): number => surface.at(faster, wider) - surface.at(0, 0);
  const [narrow, wide] = [Math.log(FACTORS[0] ?? 1), Math.log(FACTORS.at(-1) ?? 1)];
  if (more(narrow) > 0) return { clubSpeed, factor: 'under' };
  if (more(wide) < 0) return { clubSpeed, factor: 'over' };
  return { clubSpeed, factor: clubSpeed === now ? 1 : Math.exp(brent(more, narrow, wide).x) };
}

function sentenceOn(
  answer: Pick<
    FasterOrStraighter,
    'best' | 'strokesPerMph' | 'cancellingGrowthPerMph' | 'strokesForTenPercentStraighter'
  >,
  holes: number,
): string {
  const per = holes === 1 ? 'on this hole' : `over these ${holes} holes`;
  const { value, standardError } = answer.strokesPerMph;
  const clear = Math.abs(value) > 2 * standardError;
  const worth = clear
    ? `One more mph ${value < 0 ? 'saves' : 'costs'} ${Math.abs(value).toFixed(2)} strokes ${per}`
    : `One more mph makes no difference ${per} that these shots could show`;
  const straight = Math.abs(answer.strokesForTenPercentStraighter.value).toFixed(2);
  const cancelling = answer.cancellingGrowthPerMph.value;
  const growth =
    clear && cancelling > 2 * answer.cancellingGrowthPerMph.standardError
      ? ` With the same scatter a mph is worth having; it is cancelled when scatter grows by ${(100 * cancelling).toFixed(1)} % with it.`
      : '';
  const speed = toMph(answer.best.clubSpeed).toFixed(0);
  const best =
    answer.best.kind === 'within'
      ? `Speed stops paying at about ${speed} mph.`
      : answer.best.kind === 'faster-than'
        ? `Speed still pays at ${speed} mph, the fastest looked at.`
        : `Even ${speed} mph, the slowest looked at, is faster than pays.`;
  return `${worth}; 10 % less scatter saves ${straight}. ${best}${growth}`;
}
