/**
 * What a person has given: the files and every choice about them. It is all that is saved, and all that an answer is
 * made of.
 */
export interface Study {
  /** One file, or two: last time first, this time last. */
  readonly files: readonly StudyFile[];
  readonly player: string;
  readonly date: string;
  readonly place: string;
  readonly note: string;
  readonly units: 'imperial' | 'metric';
  /** Club looked at, as the file writes it; empty for the one with most shots. */
  readonly club: string;
  /** Empty for what the file says. */
  readonly hand: '' | 'right' | 'left';
  /** Loft of the head in degrees, as typed; empty for what the file says. */
  readonly loft: string;
  /** Height above the sea and temperature of the air in the unit typed beside them, as typed; empty for the usual. */
  readonly altitude: string;
  readonly temperature: string;
  readonly turf: Turf;
  /** Average score, as typed. */
  readonly score: string;
  /** Count the shots that stand apart too. */
  readonly keepOdd: boolean;
}

/** One file of shots, and how it is to be read. */
export interface StudyFile {
  readonly name: string;
  readonly text: string;
  /** What columns are, by their header, in the words of a header. */
  readonly columns: Readonly<Record<string, string>>;
  readonly dates: '' | 'day-first' | 'month-first';
}

/** Kinds of ground offered. */
export const TURFS = ['normal', 'firm', 'soft', 'wet', 'baked', 'artificial'] as const;
export type Turf = (typeof TURFS)[number];

/** A study before anything was given. */
export const NO_STUDY: Study = {
  files: [],
  player: '',
  date: '',
  place: '',
  note: '',
  units: 'imperial',
  club: '',
  hand: '',
  loft: '',
  altitude: '',
  temperature: '',
  turf: 'normal',
  score: '90',
  keepOdd: false,
};

/** A file as it was dropped. */
export function freshFile(name: string, text: string): StudyFile {
  return { name, text, columns: {}, dates: '' };
}

/** The unit that is typed beside altitude and temperature. */
export const PLACE_UNITS: Readonly<
  Record<Study['units'], { readonly altitude: string; readonly temperature: string }>
> = {
  imperial: { altitude: 'ft', temperature: 'F' },
  metric: { altitude: 'm', temperature: 'C' },
};
