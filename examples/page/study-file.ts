import { NO_STUDY, type Study, type StudyFile, TURFS } from './study.js';

/** What marks a saved study. */
const KIND = 'fairflight study';

/** A study opened again. */
export interface OpenedStudy {
  readonly study: Study;
  /** Version of the library that made it. */
  readonly version: string;
}

/** The study as one JSON file, with the version that made it. */
export function studyText(study: Study, version: string): string {
  return `${JSON.stringify({ kind: KIND, version, study }, null, 1)}\n`;
}

/** True for a text that says it is a study. */
export function isStudyText(text: string): boolean {
  return text.trimStart().startsWith('{') && text.slice(0, 200).includes(`"${KIND}"`);
}

/** Reads a saved study, field by field; undefined for a file that holds none. */
export function openedStudy(text: string): OpenedStudy | undefined {
  const json = jsonOf(text);
  if (!isRecord(json) || json['kind'] !== KIND || !isRecord(json['study'])) return undefined;
  const given = json['study'];
  const words = (name: keyof Study): string => {
    const value = given[name];
    return typeof value === 'string' ? value : String(NO_STUDY[name]);
  };
  const oneOf = <T extends string>(name: keyof Study, choices: readonly T[], otherwise: T): T =>
    choices.find((choice) => choice === given[name]) ?? otherwise;
  const files = Array.isArray(given['files']) ? given['files'].flatMap(fileOf).slice(-2) : [];
  if (files.length === 0) return undefined;
  return {
    version: typeof json['version'] === 'string' ? json['version'] : '',
    study: {
      files,
      player: words('player'),
      date: words('date'),
      place: words('place'),
      note: words('note'),
      units: oneOf('units', ['imperial', 'metric'], NO_STUDY.units),
      club: words('club'),
      hand: oneOf('hand', ['', 'right', 'left'], ''),
      loft: words('loft'),
      altitude: words('altitude'),
      temperature: words('temperature'),
      turf: oneOf('turf', TURFS, 'normal'),
      score: words('score'),
      keepOdd: given['keepOdd'] === true,
    },
  };
}

function fileOf(value: unknown): readonly StudyFile[] {
  if (!isRecord(value) || typeof value['name'] !== 'string' || typeof value['text'] !== 'string') return [];
  const columns = isRecord(value['columns']) ? value['columns'] : {};
  const named = Object.entries(columns).filter(
    (entry): entry is [string, string] => typeof entry[1] === 'string',
  );
  const dates = value['dates'] === 'day-first' || value['dates'] === 'month-first' ? value['dates'] : '';
  return [{ name: value['name'], text: value['text'], columns: Object.fromEntries(named), dates }];
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
