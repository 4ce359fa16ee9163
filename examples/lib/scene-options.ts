import type { Scene } from 'fairflight';
import { parseScene } from 'fairflight/schema';
import type { Given, Option } from './command.js';
import { UsageError } from './command.js';
import { typed } from './quantities.js';
import { fixed, signed } from './text.js';

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
    help: 'wind that blows to the right; negative to the left (default none)',
  },
  turf: { type: 'string', value: 'NAME', help: 'baked, firm, normal, soft or wet (default normal)' },
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

/** The hand the user plays with. @throws UsageError for anything but right and left */
export function handFrom(text: string | undefined): 'right' | 'left' {
  if (text === undefined || text === 'right') return 'right';
  if (text === 'left') return 'left';
  throw new UsageError(`--hand must be right or left, got ${JSON.stringify(text)}`);
}

/** The scene in words. */
export function sceneWords(scene: Scene): string {
  const air = scene.air === undefined ? '20 °C at sea level' : `air of ${fixed(scene.air.density, 3)} kg/m³`;
  const wind =
    scene.wind === undefined
      ? 'no wind'
      : `wind ${signed(scene.wind.along, 1)} m/s along (+ helps), ${signed(scene.wind.across, 1)} m/s across (+ to the right)`;
  const turf = typeof scene.turf === 'string' ? scene.turf : 'normal';
  return `${air}, ${wind}, ${turf} turf`;
}
