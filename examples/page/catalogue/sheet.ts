import type { ChangeName, EvidenceName } from 'fairflight/session';

/** What the first sentence of the sheet is made of; figures with their units. */
export interface WhereFacts {
  readonly club: string;
  readonly shots: string;
  readonly carry: string | undefined;
  readonly carryHalf: string | undefined;
  readonly speed: string | undefined;
  readonly side: string | undefined;
  readonly change: { readonly by: string; readonly more: boolean; readonly clear: boolean } | undefined;
}

/** The change that brings most, the one after it, and what weeks of training would bring; gains with their unit. */
export interface MostFacts {
  readonly change: string;
  readonly gain: string;
  readonly low: string;
  readonly high: string;
  readonly speed: string | undefined;
  readonly second: NamedGain | undefined;
  readonly training: NamedGain | undefined;
}

/** A change and its gain, with its unit. */
export interface NamedGain {
  readonly change: string;
  readonly gain: string;
}

/** Words of the sheet. */
export interface SheetWords {
  readonly title: string;
  readonly heads: readonly [where: string, most: string, next: string];
  readonly where: (facts: WhereFacts) => string;
  readonly changes: Readonly<Record<ChangeName, (step: string, more: boolean) => string>>;
  readonly readings: Readonly<Record<EvidenceName, string>>;
  readonly most: (facts: MostFacts) => string;
  readonly mostUnclear: (shots: string, training: NamedGain | undefined) => string;
  readonly mostTooFew: string;
  readonly mostMeasure: (readings: string) => string;
  readonly mostUnknown: string;
  readonly nextTry: (change: string) => string;
  readonly nextSpeed: (change: string) => string;
  readonly nextTarget: (speed: string, more: string) => string;
  readonly nextMeasure: (readings: string) => string;
  readonly nextMore: string;
  readonly shots: (count: number) => string;
  readonly club: string;
  readonly tableBands: string;
  readonly tableCompare: string;
  readonly caution: string;
  readonly small: (facts: {
    readonly read: string;
    readonly place: string;
    readonly version: string;
  }) => string;
}

const byTraining = (training: NamedGain | undefined): string =>
  training === undefined ? '' : ` Weeks of training could bring ${training.change}: ${training.gain}.`;

export const sheet: SheetWords = {
  title: 'Your shots',
  heads: ['Where you are', 'What brings most', 'What next'],
  where: ({ club, shots, carry, carryHalf, speed, side, change }) => {
    const from = speed === undefined ? '' : ` from ${speed} of club speed`;
    const known = carryHalf === undefined ? '' : `, known to ±${carryHalf}`;
    const far = carry === undefined ? `Carry was not measured${from}` : `You carry ${carry}${from}${known}`;
    const wide = side === undefined ? '' : `; two in three come down within ${side} of your own line`;
    const since =
      change === undefined
        ? ''
        : ` That is ${change.by} ${change.more ? 'more' : 'less'} than last time${change.clear ? '' : ', which may be chance'}.`;
    return `${far} (${club}, ${shots})${wide}.${since}`;
  },
  changes: {
    loft: (step, more) => `${step} ${more ? 'more' : 'less'} loft`,
    'attack-angle': (step) => `hitting ${step} more up, with a loft that suits`,
    strike: () => 'winning back half of the ball speed lost off the middle of the face',
    speed: (step) => `${step} more club speed`,
    scatter: (step) => `${step} less scatter`,
  },
  readings: {
    clubSpeed: 'club speed',
    ballSpeed: 'ball speed',
    attackAngle: 'attack angle',
    dynamicLoft: 'loft at impact',
    launchAngle: 'launch angle',
    spinRate: 'spin',
  },
  most: ({ change, gain, low, high, speed, second, training }) => {
    const at = speed === undefined ? '' : ` at ${speed}`;
    const then = second === undefined ? '' : `; then ${second.change}, ${second.gain}`;
    return `Of what can be changed now, ${change} brings most: ${gain} of carry${at} (${low} to ${high})${then}.${byTraining(training)}`;
  },
  mostUnclear: (shots, training) =>
    `No single change brings a gain that ${shots} show clearly: club and swing go together as they are.${byTraining(training)}`,
  mostTooFew: 'What would bring most is not said from fewer than five shots.',
  mostMeasure: (readings) => `What would bring most cannot be told before ${readings} is measured.`,
  mostUnknown: 'What would bring most cannot be told from these readings.',
  nextTry: (change) =>
    `Try it with your coach or fitter: ${change}, 20 shots with the same device and ball. Then put both files side by side.`,
  nextSpeed: (change) =>
    `Build up ${change} over weeks, and only without pain. Then hit 20 with the same device and ball, and put both files side by side.`,
  nextTarget: (speed, more) =>
    `The next speed to aim at is ${speed}, ${more} more than now. Take weeks over it, and only without pain.`,
  nextMeasure: (readings) => `Have ${readings} measured for ten shots, and look again.`,
  nextMore: 'Hit 20 more at your usual speed, same device and ball, and put both files side by side.',
  shots: (count) => (count === 1 ? '1 shot' : `${count} shots`),
  club: 'club not named',
  tableBands: 'Your means',
  tableCompare: 'Last time and this time',
  caution:
    'Warm up, build up over weeks, stop at pain; with an injury or in doubt ask a doctor or trainer first. Keep others well clear. Let a qualified fitter watch before a club is changed; it must still conform to the rules.',
  small: ({ read, place, version }) => `${read} ${place} Worked out by fairflight ${version}.`,
};
