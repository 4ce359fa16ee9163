import { type Scene, type Wind, windFrom } from 'fairflight';
import type { Given } from '../lib/command.js';
import { type Typed, typed, typedSpeed } from '../lib/quantities.js';
import { type SceneOption, sceneFrom } from '../lib/scene-options.js';
import { UsageError } from '../lib/usage-error.js';

/** Options that say where else the shots are flown. */
export const PLACE_OPTIONS = {
  cold: { type: 'string', value: '5C', help: 'temperature in winter, on soft turf (default 5C)' },
  warm: { type: 'string', value: '30C', help: 'temperature in summer, on firm turf (default 30C)' },
  height: { type: 'string', value: '1600m', help: 'height of the place up a mountain (default 1600m)' },
  breeze: {
    type: 'string',
    value: '15mph',
    help: 'wind of a forecast, at 10 m over an open course (default 15mph)',
  },
} as const;

/** A place or a day to which the shots are moved. */
export interface Place {
  readonly key: 'winter' | 'summer' | 'altitude' | 'into' | 'with' | 'across';
  /** Two lines for the head of a column. */
  readonly head: readonly [string, string];
  /** The same in a sentence. */
  readonly says: string;
  readonly scene: Scene;
}

type PlaceOption = SceneOption | keyof typeof PLACE_OPTIONS;

/** The scene in which the shots were measured, and those to which they are moved. */
export function placesFrom(
  given: Pick<Given<PlaceOption>, 'text'>,
  usual: Readonly<Partial<Record<SceneOption, string>>>,
): { readonly home: Scene; readonly places: readonly Place[] } {
  const home = (name: SceneOption): string | undefined => given.text(name) ?? usual[name];
  const calm = (over: Readonly<Partial<Record<SceneOption, string>>>): Scene =>
    sceneFrom({
      text: (name) => over[name] ?? (name === 'headwind' || name === 'crosswind' ? undefined : home(name)),
    });
  const cold = given.text('cold') ?? '5C';
  const warm = given.text('warm') ?? '30C';
  const height = given.text('height') ?? '1600m';
  const breeze = given.text('breeze') ?? '15mph';
  const temperature = home('temperature') ?? '20C';
  const speed = typedSpeed('breeze', breeze);
  if (!(speed > 0)) throw new UsageError('--breeze needs a wind above 0');
  const wind = (clock: number): Wind => windFrom({ speed, clock, terrain: 'links-course' });
  const w = shown('breeze', breeze);
  const c = shown('cold', cold);
  const s = shown('warm', warm);
  const h = shown('height', height);
  return {
    home: sceneFrom({ text: home }),
    places: [
      {
        key: 'winter',
        head: ['winter', c],
        says: `in winter (${c}, soft turf)`,
        scene: calm({ temperature: cold, turf: 'soft' }),
      },
      {
        key: 'summer',
        head: ['summer', s],
        says: `in summer (${s}, firm turf)`,
        scene: calm({ temperature: warm, turf: 'firm' }),
      },
      {
        key: 'altitude',
        head: ['altitude', h],
        says: `at ${h} (${shown('temperature', temperature)})`,
        scene: calm({ altitude: height, temperature }),
      },
      { key: 'into', head: ['into', w], says: `into ${w}`, scene: { ...calm({}), wind: wind(12) } },
      { key: 'with', head: ['with', w], says: `with ${w} behind`, scene: { ...calm({}), wind: wind(6) } },
      {
        key: 'across',
        head: ['across', w],
        says: `with ${w} from the left`,
        scene: { ...calm({}), wind: wind(9) },
      },
    ],
  };
}

/** A typed quantity as it reads in print: `5 °C`, `1600 m`. */
function shown(option: string, text: string): string {
  const { value, unit }: Typed = typed(option, text, '20C');
  const name = /^[cf]$/i.test(unit) ? `°${unit.toUpperCase()}` : unit;
  return `${String(value).replace('-', '−')} ${name}`;
}
