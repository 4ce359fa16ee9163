import {
  choice,
  type Declared,
  type ListField,
  optional,
  type QuantityField,
  quantity,
  type RecordField,
  record,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';
import type { Angle, Length } from '../units/index.js';
import { DEGREES, YARDS } from '../units/unit.js';
import { type Polygon, polygonField } from './polygon.js';

/** Turn of the centre line of a hole. */
export interface Bend {
  /** Distance from the tee at which it turns [m], 0 to 1,000. */
  readonly at: Length;
  /** By how much [rad], + to the right, −2 to 2. */
  readonly angle: Angle;
}

/** A strip of mown grass along the centre line of a hole. */
export interface FairwayStrip {
  /** Width across the centre line [m], 0.1 to 500. */
  readonly width: Length;
  /** Distance from the tee along the centre line at which it begins [m], 0 to 1,000; default 0. */
  readonly from?: Length;
  /** Distance at which it ends [m], 0 to 1,000; default never. */
  readonly to?: Length;
  /** Turn of the centre line; default it is straight. */
  readonly bend?: Bend;
  readonly polygon?: never;
}

/** A fairway of any shape. */
export interface FairwayArea {
  /** Its outline; see {@link Polygon}. */
  readonly polygon: Polygon;
  /** Turn of the centre line, by which the hole lies; default it is straight. */
  readonly bend?: Bend;
  readonly width?: never;
  readonly from?: never;
  readonly to?: never;
}

/** The mown grass of a hole. */
export type Fairway = FairwayStrip | FairwayArea;

/** What lies in a hazard. `trees` leave a recovery shot. */
export type HazardKind = 'sand' | 'trees' | 'penalty-area' | 'out-of-bounds';

/**
 * A strip along the hole, for example a stream, trees or the boundary. Its ends along the hole are measured from the
 * tee on the centre line, its sides across it, + right; an end left out has no limit.
 */
export interface HazardStrip {
  /** What lies there. */
  readonly kind: HazardKind;
  /** Nearest distance along the hole [m], −1,000 to 1,000. */
  readonly alongFrom?: Length;
  /** Furthest distance along the hole [m], −1,000 to 1,000. */
  readonly alongTo?: Length;
  /** Left side [m], + right of the centre line, −1,000 to 1,000. */
  readonly acrossFrom?: Length;
  /** Right side [m], −1,000 to 1,000. */
  readonly acrossTo?: Length;
  readonly polygon?: never;
}

/** A hazard of any shape. */
export interface HazardArea {
  /** What lies there. */
  readonly kind: HazardKind;
  /** Its outline; see {@link Polygon}. */
  readonly polygon: Polygon;
  readonly alongFrom?: never;
  readonly alongTo?: never;
  readonly acrossFrom?: never;
  readonly acrossTo?: never;
}

/** Ground with trouble. */
export type Hazard = HazardStrip | HazardArea;

/** A hole as a tee shot sees it. What is neither fairway, green nor hazard is rough. */
export interface Hole {
  /** Length from tee to hole along the centre line [m], 45 to 640.08 (700 yards). */
  readonly length: Length;
  /** The fairway. */
  readonly fairway: Fairway;
  /** Ground with trouble; where two overlap the worse counts. */
  readonly hazards?: readonly Hazard[];
  /** Radius of the green about the hole [m], 0 to 50; default 10 yards. */
  readonly greenRadius?: Length;
}

type FairwayParts = Partial<Omit<FairwayStrip, 'polygon'> & Pick<FairwayArea, 'polygon'>>;
type HazardParts = Omit<HazardStrip, 'polygon'> & Partial<Pick<HazardArea, 'polygon'>>;

/** Declaration of {@link Fairway}. @internal */
export const fairwayField: RecordField = /* @__PURE__ */ frozen(() => {
  const bend: Declared<Bend> = {
    at: quantity(YARDS, 0, 1000, 210, 'distance of the bend'),
    angle: quantity(DEGREES, -2, 2, 0.3, 'turn of the fairway'),
  };
  const parts: Declared<FairwayParts> = {
    width: optional(quantity(YARDS, 0.1, 500, 30, 'width of the fairway')),
    from: optional(quantity(YARDS, 0, 1000, 150, 'beginning of the fairway')),
    to: optional(quantity(YARDS, 0, 1000, 350, 'end of the fairway')),
    bend: optional(record(bend, 'bend')),
    polygon: optional(polygonField),
  };
  return record(parts, 'fairway', ({ width, from, to, polygon }: FairwayParts, path) => {
    if (polygon !== undefined) return requireAlone(path, { width, from, to });
    if (width === undefined) throw refusal(`${path}.width`, `${path} needs a width or a polygon`);
    if ((to ?? Infinity) < (from ?? 0)) {
      throw refusal(`${path}.to`, `${path}.to must not lie before ${path}.from`, { value: to });
    }
  });
});

/** Declaration of {@link Hazard}. @internal */
export const hazardField: RecordField = /* @__PURE__ */ frozen(() => {
  const end = (label: string): QuantityField<'m'> & { readonly optional: true } =>
    optional(quantity(YARDS, -1000, 1000, 30, label));
  const parts: Declared<HazardParts> = {
    kind: choice<HazardKind>(['sand', 'trees', 'penalty-area', 'out-of-bounds'], 'hazard'),
    alongFrom: end('near end of the hazard'),
    alongTo: end('far end of the hazard'),
    acrossFrom: end('left side of the hazard'),
    acrossTo: end('right side of the hazard'),
    polygon: optional(polygonField),
  };
  return record(parts, 'hazard', ({ kind: _, polygon, ...strip }: HazardParts, path) => {
    if (polygon !== undefined) return requireAlone(path, strip);
    const { alongFrom, alongTo, acrossFrom, acrossTo } = sidesOf(strip);
    if (!(alongTo > alongFrom && acrossTo > acrossFrom)) {
      throw refusal(path, `${path} must end beyond where it begins`);
    }
  });
});

/** Declaration of a list of hazards. @internal */
export const hazardsField: ListField & { readonly optional: true } = /* @__PURE__ */ frozen(() =>
  optional({ kind: 'list', of: hazardField, least: 0, most: 1000, label: 'hazards' }),
);

/** @throws FairflightError where a polygon has measures of a strip beside it */
function requireAlone(path: string, strip: object): void {
  const beside = Object.entries(strip).find(([, value]) => value !== undefined);
  if (beside === undefined) return;
  throw refusal(`${path}.${beside[0]}`, `${path} has a polygon and ${beside[0]}; give one or the other`);
}

/** The sides of a strip; one that was left out has no limit. @internal */
export function sidesOf(strip: Partial<Sides>): Sides {
  const { alongFrom = -Infinity, alongTo = Infinity, acrossFrom = -Infinity, acrossTo = Infinity } = strip;
  return { alongFrom, alongTo, acrossFrom, acrossTo };
}

type Sides = { readonly [Side in Exclude<keyof HazardStrip, 'kind' | 'polygon'>]: number };

/** Declaration of {@link Hole.greenRadius}. @internal */
export const greenRadiusField: QuantityField<'m'> & { readonly optional: true } = /* @__PURE__ */ frozen(() =>
  optional(quantity(YARDS, 0, 50, 9, 'radius of the green')),
);

/** Declaration of {@link Hole}. @internal */
export const holeField: RecordField = /* @__PURE__ */ frozen(() => {
  const fields: Declared<Hole> = {
    length: quantity(YARDS, 45, 640.08, 380, 'length of the hole'),
    fairway: fairwayField,
    hazards: hazardsField,
    greenRadius: greenRadiusField,
  };
  return record(fields, 'hole');
});
