import { airAt, type Scene } from 'fairflight';
import { parseScene } from 'fairflight/schema';
import type { Given, Option } from './command.js';
import type { Display } from './display.js';
import { typed } from './quantities.js';
import { fixed, listed } from './text.js';
import { UsageError } from './usage-error.js';

/** Names of {@link SCENE_OPTIONS}. */
export type SceneOption = 'altitude' | 'temperature' | 'headwind' | 'crosswind' | 'turf' | 'aerodynamics';

/** Options by which every example is told where the ball is hit. */
export const SCENE_OPTIONS: Readonly<Record<SceneOption, Option>> = {
  altitude: {
    type: 'string',
    value: '1200m',
    help: 'height above sea level, in m or ft (default sea level)',
  },
  temperature: {
    type: 'string',
    value: '20C',
    help: 'air temperature, in C or F (default 20C at sea level)',
  },
  headwind: {
    type: 'string',
    value: '5mph',
    help: 'wind against the ball; negative is a tailwind (default none)',
  },
  crosswind: {
    type: 'string',
    value: '5mph',
    help: 'wind to the right; negative is to the left (default none)',
  },
  turf: {
    type: 'string',
    value: 'NAME',
    help: 'baked, firm, normal, soft, wet, artificial and more (default normal)',
  },
  aerodynamics: {
    type: 'string',
    value: 'ID',
    help: 'coefficient model of the ball (default fitted-modern)',
  },
};

/** The scene the user described. @throws FairflightError for a value that cannot be */
export function sceneFrom(given: Pick<Given<SceneOption>, 'text'>): Scene {
  const quantity = (name: SceneOption, example: string): { value: number; unit: string } | undefined => {
    const text = given.text(name);
    return text === undefined ? undefined : typed(name, text, example);
  };
  const altitude = quantity('altitude', '1200m');
  const temperature = quantity('temperature', '20C');
  const headwind = quantity('headwind', '5mph');
  const crosswind = quantity('crosswind', '5mph');
  const turf = given.text('turf');
  const aerodynamics = given.text('aerodynamics');
  const wind = headwind !== undefined || crosswind !== undefined;
  return parseScene({
    ...((altitude !== undefined || temperature !== undefined) && {
      air: { altitude: altitude ?? { value: 0, unit: 'm' }, ...(temperature && { temperature }) },
    }),
    ...(wind && {
      wind: {
        along: headwind === undefined ? calm : { ...headwind, value: -headwind.value },
        across: crosswind ?? calm,
      },
    }),
    ...(turf !== undefined && { turf }),
    ...(aerodynamics !== undefined && { aerodynamics }),
  });
}

const calm = { value: 0, unit: 'm/s' };

/** Option of {@link handFrom}. */
export const HAND_OPTION: Option = {
  type: 'string',
  value: 'NAME',
  help: 'right or left (default what the file says, else right)',
};

/** The hand the user plays with. @throws UsageError for anything but right and left */
export function handFrom(text: string | undefined): 'right' | 'left' {
  if (text === undefined || text === 'right') return 'right';
  if (text === 'left') return 'left';
  throw new UsageError(`--hand must be right or left, got ${JSON.stringify(text)}`);
}

/** The scene in words. */
export function sceneWords({ air, wind, turf }: Scene, display: Display): string {
  const ground = typeof turf === 'string' ? turf : 'normal';
  return `${airWords(air, display)}, ${windWords(wind, display)}, ${ground} turf`;
}

/** Temperature of the usual air [K]. */
const USUAL_TEMPERATURE = 293.15;

function airWords(air: Scene['air'], { temperature: { of, unit } }: Display): string {
  const usually = `${fixed(of(USUAL_TEMPERATURE))} ${unit}`;
  if (air === undefined) return `${usually} at sea level`;
  const usual = airAt().density;
  const share = fixed(100 * Math.abs(air.density / usual - 1), 1);
  const than = `than at ${usually} and sea level (${fixed(air.density, 3)} kg/m³)`;
  return `air ${share} % ${air.density < usual ? 'thinner' : 'denser'} ${than}`;
}

function windWords(wind: Scene['wind'], { speed }: Display): string {
  if (wind === undefined) return 'no wind';
  const shown = (value: number): string => `${fixed(Math.abs(speed.of(value)), 1)} ${speed.unit}`;
  const parts = [
    ...(wind.along === 0 ? [] : [`${wind.along < 0 ? 'headwind' : 'tailwind'} ${shown(wind.along)}`]),
    ...(wind.across === 0
      ? []
      : [`crosswind ${shown(wind.across)} to the ${wind.across < 0 ? 'left' : 'right'}`]),
  ];
  return parts.length === 0 ? 'no wind' : listed(parts);
}
