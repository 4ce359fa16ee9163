import type { Clubhead } from '../clubhead/index.js';
import type { PlayerHand } from '../inputs/delivery.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import type { NormalPrior } from '../inputs/prior.js';
import type { ReadingErrors } from '../inputs/readings.js';
import { logSumExp, median } from '../numerics/index.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { LocatedStrike } from '../strike/index.js';
import { locate } from '../strike/locate.js';

/** Normal priors of where on the face a strike was. @internal */
export interface FacePrior {
  readonly toe: NormalPrior;
  readonly high: NormalPrior;
}

/** What all shots of a calibration have in common. @internal */
export interface Setting {
  readonly head: Clubhead;
  readonly scene: ResolvedScene;
  readonly hand: PlayerHand;
  readonly errors: ReadingErrors;
  /** Strikes of anyone, from which the strikes of this player are learnt. */
  readonly anyone: FacePrior;
  /** Habits of the player in what was not measured, where they are not those of anyone with this club. */
  readonly usual: { readonly attackAngle?: NormalPrior; readonly dynamicLoft?: NormalPrior };
}

/** A place on the face [m]. @internal */
export interface Place {
  readonly toe: number;
  readonly high: number;
}

/** A point of a quadrature over the face. @internal */
export interface Node extends Place {
  /** Logarithm of prior density and area. */
  readonly logWeight: number;
}

/** Strikes over the face: a player's pattern, with wild ones among them. @internal */
export interface StrikePrior {
  readonly pattern: FacePrior;
  /** Spread of the wild ones; that of anyone. */
  readonly wild: FacePrior;
}

/** One strike in this many is taken as wild: an assumption, so that one struck off the heel is not taken for a misread. */
const WILD = 0.1;
/** Fewest located strikes from which a player's pattern is learnt. */
const PATTERN = 10;
/** Quadrature points each way about a located strike, a standard deviation apart, and over the whole face. */
const NEAR = 7;
const WIDE = { toe: 15, high: 11 } as const;
/** Half widths of the two in standard deviations. */
const NEAR_REACH = 3;
const WIDE_REACH = 3.5;

/** Where each shot was struck; undefined where there is no single answer. @internal */
export function locateAll(
  shots: readonly MeasuredShot[],
  { head, scene, hand, errors, anyone }: Setting,
): readonly (LocatedStrike | undefined)[] {
  return shots.map((shot) => {
    const estimate = locate(shot, {
      clubhead: head,
      ball: scene.ball,
      hand,
      readingErrors: errors,
      priors: anyone,
    });
    return estimate.outcome === 'located' && estimate.alternatives.length === 0 ? estimate : undefined;
  });
}

/**
 * The spread of this player's strikes over the face, learnt from the strikes that can be located: median and median
 * absolute deviation, with the uncertainty of each location added. The mean height stays as assumed: it cannot be told
 * from the tangential restitution.
 * @internal
 */
export function learntPattern(located: readonly (LocatedStrike | undefined)[], anyone: FacePrior): FacePrior {
  const found = locatedIn(located);
  if (found.length < PATTERN) return anyone;
  const spread = (values: readonly number[], centre: number, variances: readonly number[]): number => {
    const deviation = 1.4826 * median(values.map((value) => Math.abs(value - centre)));
    return Math.max(0.002, Math.sqrt(deviation ** 2 + median(variances)));
  };
  const toes = found.map(({ strikeOffset }) => strikeOffset.toe as number);
  const highs = found.map(({ strikeOffset }) => strikeOffset.high as number);
  const toe = median(toes);
  return {
    toe: {
      mean: toe,
      standardDeviation: spread(
        toes,
        toe,
        found.map(({ covariance }) => covariance[0][0]),
      ),
    },
    high: {
      mean: anyone.high.mean,
      standardDeviation: spread(
        highs,
        median(highs),
        found.map(({ covariance }) => covariance[1][1]),
      ),
    },
  };
}

function locatedIn(located: readonly (LocatedStrike | undefined)[]): readonly LocatedStrike[] {
  return located.filter((estimate): estimate is LocatedStrike => estimate !== undefined);
}

/**
 * The pattern with spreads one standard error larger, which are learnt from few strikes: a median absolute deviation of n
 * normal values is known to 1.17/√n of itself (asymptotic efficiency 0.37, Hampel 1974, J. Am. Stat. Assoc. 69, 383).
 * @internal
 */
export function widerPattern(pattern: FacePrior, located: readonly (LocatedStrike | undefined)[]): FacePrior {
  const factor = 1 + 1.17 / Math.sqrt(Math.max(1, locatedIn(located).length));
  const wider = ({ mean, standardDeviation }: NormalPrior): NormalPrior => ({
    mean,
    standardDeviation: factor * standardDeviation,
  });
  return { toe: wider(pattern.toe), high: wider(pattern.high) };
}

/** Quadrature about a located strike, else over the whole face. @internal */
export function nodesOf(located: LocatedStrike | undefined, prior: StrikePrior): readonly Node[] {
  if (located === undefined) return wholeFace(prior);
  const { strikeOffset: mode, covariance } = located;
  const [[a, b], [, d]] = covariance;
  const along = Math.sqrt(a);
  const cross = b / along;
  const rest = Math.sqrt(Math.max(1e-12, d - cross * cross));
  const pitch = (2 * NEAR_REACH) / (NEAR - 1);
  const logArea = Math.log(along * rest * pitch * pitch);
  return Array.from({ length: NEAR * NEAR }, (_, k): Node => {
    const u = pitch * ((k % NEAR) - (NEAR - 1) / 2);
    const v = pitch * (Math.floor(k / NEAR) - (NEAR - 1) / 2);
    const place = { toe: mode.toe + along * u, high: mode.high + cross * u + rest * v };
    return { ...place, logWeight: logDensity(prior, place) + logArea };
  });
}

/** Quadrature over all the face that strikes may reach. @internal */
export function wholeFace(prior: StrikePrior): readonly Node[] {
  const side = (name: 'toe' | 'high', count: number): readonly number[] => {
    const { wild, pattern } = prior;
    const reach = WIDE_REACH * Math.max(wild[name].standardDeviation, pattern[name].standardDeviation);
    return Array.from({ length: count }, (_, i) => pattern[name].mean + reach * ((2 * i) / (count - 1) - 1));
  };
  const toes = side('toe', WIDE.toe);
  const highs = side('high', WIDE.high);
  const logArea = Math.log(
    ((toes[1] as number) - (toes[0] as number)) * ((highs[1] as number) - (highs[0] as number)),
  );
  return highs.flatMap((high) =>
    toes.map((toe): Node => ({ toe, high, logWeight: logDensity(prior, { toe, high }) + logArea })),
  );
}

function logDensity({ pattern, wild }: StrikePrior, place: Place): number {
  const usual = Math.log(1 - WILD) + logNormal(pattern, place);
  const rare = Math.log(WILD) + logNormal(wild, place);
  return logSumExp([usual, rare]);
}

function logNormal({ toe, high }: FacePrior, at: Place): number {
  const u = (at.toe - toe.mean) / toe.standardDeviation;
  const v = (at.high - high.mean) / high.standardDeviation;
  return -0.5 * (u * u + v * v) - Math.log(2 * Math.PI * toe.standardDeviation * high.standardDeviation);
}
