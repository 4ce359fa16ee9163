import type { ListField } from '../inputs/field.js';
import { choice } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';

/** What a sweep can compute in each row; every name is the path of the figure in a `Shot`. */
export type OutputName =
  | 'strike.smashFactor'
  | 'strike.spinLoft'
  | 'strike.faceToPath'
  | 'strike.backspin'
  | 'strike.sidespin'
  | 'strike.restitution'
  | 'strike.clubSpeedAfter'
  | 'launch.ballSpeed'
  | 'launch.launchAngle'
  | 'launch.launchDirection'
  | 'launch.spinRate'
  | 'launch.spinAxisTilt'
  | 'launch.rifleSpin'
  | 'carry'
  | 'flight.side'
  | 'flight.curve'
  | 'flight.apex'
  | 'flight.apexAt'
  | 'flight.hangTime'
  | 'flight.descentAngle'
  | 'flight.landing.speed'
  | 'flight.landing.spinRate'
  | 'run.distance'
  | 'run.side'
  | 'total'
  | 'side';

/** Where in the walk an output is made. @internal */
export type Stage = 'strike' | 'launch' | 'flight' | 'run';

interface OutputSpec {
  readonly unit: string;
  readonly stage: Stage;
}

function made(stage: Stage, unit: string): OutputSpec {
  return { unit, stage };
}

/** Every output with its unit and stage, in the order of the walk. @internal */
export const OUTPUTS: { readonly [Name in OutputName]: OutputSpec } = /* @__PURE__ */ frozen(() => ({
  'strike.smashFactor': made('strike', ''),
  'strike.spinLoft': made('strike', 'rad'),
  'strike.faceToPath': made('strike', 'rad'),
  'strike.backspin': made('strike', 'rad/s'),
  'strike.sidespin': made('strike', 'rad/s'),
  'strike.restitution': made('strike', ''),
  'strike.clubSpeedAfter': made('strike', 'm/s'),
  'launch.ballSpeed': made('launch', 'm/s'),
  'launch.launchAngle': made('launch', 'rad'),
  'launch.launchDirection': made('launch', 'rad'),
  'launch.spinRate': made('launch', 'rad/s'),
  'launch.spinAxisTilt': made('launch', 'rad'),
  'launch.rifleSpin': made('launch', 'rad/s'),
  carry: made('flight', 'm'),
  'flight.side': made('flight', 'm'),
  'flight.curve': made('flight', 'm'),
  'flight.apex': made('flight', 'm'),
  'flight.apexAt': made('flight', 'm'),
  'flight.hangTime': made('flight', 's'),
  'flight.descentAngle': made('flight', 'rad'),
  'flight.landing.speed': made('flight', 'm/s'),
  'flight.landing.spinRate': made('flight', 'rad/s'),
  'run.distance': made('run', 'm'),
  'run.side': made('run', 'm'),
  total: made('run', 'm'),
  side: made('run', 'm'),
}));

const ALL: readonly OutputName[] = /* @__PURE__ */ frozen(() => Object.keys(OUTPUTS) as OutputName[]);
const FROM_LAUNCH: readonly OutputName[] = [
  'carry',
  'flight.side',
  'flight.curve',
  'flight.apex',
  'flight.hangTime',
  'flight.descentAngle',
  'total',
  'side',
];
const FROM_DELIVERY: readonly OutputName[] = /* @__PURE__ */ frozen(() => [
  'strike.smashFactor',
  'launch.ballSpeed',
  'launch.launchAngle',
  'launch.launchDirection',
  'launch.spinRate',
  'launch.spinAxisTilt',
  ...FROM_LAUNCH,
]);

/** Declaration of the outputs asked for. @internal */
export const outputsField: ListField = /* @__PURE__ */ frozen(() => ({
  kind: 'list',
  of: choice(Object.keys(OUTPUTS) as OutputName[], 'output'),
  least: 0,
  most: 1000,
  label: 'outputs',
}));

/**
 * The outputs asked for, in the order of the walk; a default set when nothing is asked for.
 * @throws `FairflightError` `invalid-input` for one of the strike when there is none
 * @internal
 */
export function resolveOutputs(
  asked: readonly OutputName[] | undefined,
  struck: boolean,
): readonly OutputName[] {
  if (asked === undefined) return struck ? FROM_DELIVERY : FROM_LAUNCH;
  const beforeFlight = ({ stage }: OutputSpec): boolean => stage === 'strike' || stage === 'launch';
  asked.forEach((name, i) => {
    if (struck || !beforeFlight(OUTPUTS[name])) return;
    throw refusal(`options.outputs[${i}]`, `${name} needs a strike: this sweep starts from a launch`, {
      value: name,
    });
  });
  return ALL.filter((name) => asked.includes(name));
}
