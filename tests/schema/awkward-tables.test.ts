import { describe, expect, it } from 'vitest';
import { airAtAltitude } from '../../src/air/index.js';
import { isFairflightError } from '../../src/errors.js';
import { fly } from '../../src/flight/index.js';
import type { MeasuredShot } from '../../src/inputs/measured-shot.js';
import { type ReadShotsOptions, readShots } from '../../src/schema/index.js';
import { degrees, metres, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { DRIVES, IRONS } from './awkward/bag.js';
import { type Columns, IN, type Shown, table, type Write } from './awkward/flown.js';

/*
 * Tables as devices and spreadsheets write them, of shots of our own invention. Each says what must come out: the
 * shots themselves, whatever the units, the header or the cells look like.
 */

const FULL: Columns = [
  ['Club Speed', IN.clubMph],
  ['Ball Speed', IN.ballMph],
  ['Launch Angle', IN.launch],
  ['Spin Rate', IN.spin],
  ['Carry', IN.carryYd],
  ['Apex', IN.apexFt],
];
const STATED: Columns = [
  ['club speed (mph)', IN.clubMph],
  ['ball speed (mph)', IN.ballMph],
  ['launch angle (deg)', IN.launch],
  ['spin (rpm)', IN.spin],
  ['carry (yd)', IN.carryYd],
];
const METRIC: Columns = [
  ['club speed', IN.clubKph],
  ['ball speed', IN.ballKph],
  ['launch angle', IN.launch],
  ['spin', IN.spin],
  ['carry', IN.carryM],
  ['apex', IN.apexM],
];

/** What the fields of a shot must be within what was written. */
const TRUE: Readonly<Partial<Record<keyof MeasuredShot, readonly [(shot: Shown) => number, room: number]>>> =
  {
    clubSpeed: [({ club }) => club * 0.44704, 0.03],
    ballSpeed: [({ ball }) => ball * 0.44704, 0.25],
    launchAngle: [({ launch }) => (launch * Math.PI) / 180, 0.002],
    launchDirection: [({ direction }) => (direction * Math.PI) / 180, 0.002],
    spinRate: [({ spin }) => (spin * Math.PI) / 30, 0.2],
    spinAxisTilt: [({ tilt }) => (tilt * Math.PI) / 180, 0.002],
    attackAngle: [({ attack }) => (attack * Math.PI) / 180, 0.002],
    carry: [({ carry }) => carry * 0.9144, 0.35],
    apex: [({ apex }) => apex * 0.3048, 0.2],
    descentAngle: [({ descent }) => (descent * Math.PI) / 180, 0.002],
    side: [({ side }) => side * 0.9144, 0.1],
    hangTime: [({ hang }) => hang, 0.01],
  };

/** Reads a table and holds its shots, and every field there is, to the truth. */
function expectShots(
  text: string,
  shots: readonly Shown[] = DRIVES,
  options: ReadShotsOptions = {},
  fields: readonly (keyof MeasuredShot)[] = ['ballSpeed', 'launchAngle', 'spinRate'],
): ReturnType<typeof readShots> {
  const read = readShots(text, options);
  expect(read.shots.length, JSON.stringify(read.rejected)).toBe(shots.length);
  // What was found serves as options: the same file is read the same with them, and nothing is left to find.
  expect(readShots(text, read.readAs).shots).toEqual(read.shots);
  for (const [i, shot] of read.shots.entries()) {
    for (const field of fields) expect(shot, field).toHaveProperty(field);
    for (const [field, [of, room]] of Object.entries(TRUE)) {
      const value = shot[field as keyof MeasuredShot];
      if (value === undefined) continue;
      const error = Math.abs(Number(value) - of(shots[i] as Shown));
      expect(error, `${field} of shot ${i}`).toBeLessThanOrEqual(room);
    }
  }
  return read;
}

function refusalOf(text: string, options: ReadShotsOptions = {}): string {
  try {
    readShots(text, options);
  } catch (error) {
    if (isFairflightError(error)) return error.message;
    throw error;
  }
  throw new Error('the table was read');
}

const renamed = (columns: Columns, names: Readonly<Record<string, string>>): Columns =>
  columns.map(([header, write]) => [names[header] ?? header, write]);
const headers = (columns: Columns, name: (header: string) => string): Columns =>
  columns.map(([header, write]) => [name(header), write]);
const written = (columns: Columns, header: string, write: (text: string) => string): Columns =>
  columns.map(([name, of]): readonly [string, Write] => [
    name,
    name === header ? (shot) => write(of(shot)) : of,
  ]);
const plus = (columns: Columns, header: string, write: Write): Columns => [...columns, [header, write]];
const thousands = (mark: string) => (text: string) => text.replace(/(\d)(\d{3})$/, `$1${mark}$2`);
const sided =
  (write: (size: string, side: 'L' | 'R') => string) =>
  (text: string): string =>
    write(text.replace('-', ''), text.startsWith('-') ? 'L' : 'R');

describe('headers without units are read by the flight of the shots', () => {
  it.each<[string, Columns, readonly Shown[]]>([
    ['mph, yards and feet', FULL, DRIVES],
    ['mph and yards, apex in yards', [...FULL.slice(0, 5), ['Apex', IN.apexYd]], DRIVES],
    ['km/h and metres', METRIC, DRIVES],
    ['m/s and metres', [['club speed', IN.clubMs], ['ball speed', IN.ballMs], ...METRIC.slice(2)], DRIVES],
    ['mph and yards without an apex', FULL.slice(0, 5), DRIVES],
    ['km/h and metres without an apex', METRIC.slice(0, 5), DRIVES],
    ['without a club speed', FULL.slice(1), DRIVES],
    ['irons in mph and yards', FULL, IRONS],
    ['irons in km/h and metres', METRIC, IRONS],
    ['two clubs at once', FULL, [...DRIVES, ...IRONS]],
    [
      'hang time and descent',
      [...FULL.slice(0, 4), ['hang time', IN.hang], ['descent angle', IN.descent]],
      DRIVES,
    ],
    ['speeds alone are stated', [...STATED.slice(0, 2), ...FULL.slice(2)], DRIVES],
    [
      'distances alone are stated',
      [...FULL.slice(0, 4), ['carry (yd)', IN.carryYd], ['apex (ft)', IN.apexFt]],
      DRIVES,
    ],
    [
      'one speed is stated, the other is like it',
      [['club speed (mph)', IN.clubMph], ...FULL.slice(1)],
      DRIVES,
    ],
    ['a launch in radians', [...FULL.slice(0, 2), ['launch angle', IN.launchRad], ...FULL.slice(3)], DRIVES],
    ['a carry in feet', [...FULL.slice(0, 4), ['carry', IN.carryFt], ['apex', IN.apexFt]], DRIVES],
  ])('%s', (_name, columns, shots) => {
    const { notes } = expectShots(table(columns, shots), shots, {}, ['ballSpeed', 'launchAngle', 'spinRate']);
    expect(notes[0]).toMatch(/the header gives no unit, read as/);
  });

  it('says what was found, how well it agrees and how badly the next does', () => {
    const [note = ''] = readShots(table(FULL, DRIVES)).notes;
    const found =
      /read as mph, yd and ft: carry agrees with the flight of the shots within (\d+) yd; as (.*) it would miss by (\d+) (yd|m)$/.exec(
        note,
      );
    expect(found, note).not.toBeNull();
    expect(Number(found?.[1])).toBeLessThan(20);
    expect(Number(found?.[3])).toBeGreaterThan(20);
  });

  it.each<[string, Columns, RegExp]>([
    [
      'speeds of the ball that may be mph or km/h, and nothing to tell',
      FULL.slice(1, 4),
      /no unit for ball speed.*could be .*mph.*units: speed \(mph, km\/h, m\/s\)/,
    ],
  ])('refuses %s', (_name, columns, message) => {
    expect(refusalOf(table(columns, DRIVES))).toMatch(message);
  });

  it('takes the unit the caller gives', () => {
    const launches = table(FULL.slice(1, 4), DRIVES);
    expectShots(launches, DRIVES, { units: { speed: 'mph', angle: 'deg', spin: 'rpm' } });
    expectShots(table(METRIC.slice(1, 4), DRIVES), DRIVES, { units: { speed: 'km/h' } });
    expect(refusalOf(launches, { units: { speed: 'furlongs' } })).toMatch(/options\.units\.speed/);
  });

  it('leaves a log of club speeds open where they could be two things', () => {
    const log = (speeds: readonly number[]): string =>
      ['date,club speed', ...speeds.map((v) => `2026-03-01,${v}`)].join('\n');
    expect(refusalOf(log([104, 106, 101]), { needs: 'club-speed' })).toMatch(/could be mph.* or km\/h/);
    const read = readShots(log([104, 106, 101]), { needs: 'club-speed', units: { speed: 'mph' } });
    expect(read.shots[0]?.clubSpeed).toBeCloseTo(104 * 0.44704, 9);
    // A child swings 41 mph; 41 m/s is 92 mph.
    expect(refusalOf(log([41.2, 42, 40.4]), { needs: 'club-speed' })).toMatch(/could be m\/s, or mph/);
    // 175 mph has not been swung; 175 km/h is 109 mph.
    expect(readShots(log([175, 181, 178]), { needs: 'club-speed' }).shots[0]?.clubSpeed).toBeCloseTo(
      175 / 3.6,
      9,
    );
  });
});

describe('a header whose unit is wrong', () => {
  it.each<[string, string, Write, string, RegExp]>([
    ['carry in feet called yards', 'carry (yd)', IN.carryFt, 'carry', /read as ft they would agree/],
    ['apex in feet called metres', 'apex (m)', IN.apexFt, 'apex', /read as ft they would agree/],
    ['apex in metres called feet', 'apex (ft)', IN.apexM, 'apex', /read as (m|yd) they would agree/],
  ])('%s: the column is left out, and what would mend it is said', (_name, header, write, field, message) => {
    const columns = [...STATED.filter(([name]) => name !== header), [header, write] as const];
    const read = expectShots(table(columns, DRIVES));
    expect(read.shots.every((shot) => !(field in shot))).toBe(true);
    const rejection = read.rejected.find(({ scope }) => scope === 'column');
    expect(rejection).toMatchObject({ reason: 'contradiction', column: header });
    expect(rejection?.message).toMatch(message);
  });

  it.each<[string, string, Write, RegExp]>([
    [
      'ball speed in km/h called mph',
      'ball speed (mph)',
      IN.ballKph,
      /"ball speed \(mph\)".*read as km\/h they agree/,
    ],
    [
      'launch in radians called degrees',
      'launch angle (deg)',
      IN.launchRad,
      /"launch angle \(deg\)".*read as rad they agree/,
    ],
    [
      'ball speed in m/s called mph',
      'ball speed (mph)',
      IN.ballMs,
      /"ball speed \(mph\)".*read as m\/s they agree/,
    ],
  ])('%s: the file is refused with what would mend it', (_name, header, write, message) => {
    const columns = STATED.map(([name, of]) => [name, name === header ? write : of] as const);
    expect(refusalOf(table(columns, DRIVES))).toMatch(message);
  });
});

describe('headers as they come', () => {
  const snake = (header: string): string => header.replaceAll(' ', '_').toLowerCase();
  const camel = (header: string): string =>
    header.toLowerCase().replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase());
  it.each<[string, Columns]>([
    ['snake case', headers(FULL, snake)],
    ['camel case', headers(FULL, camel)],
    ['capitals', headers(FULL, (header) => header.toUpperCase())],
    ['no blanks at all', headers(FULL, (header) => header.replaceAll(' ', '').toLowerCase())],
    ['hyphens', headers(FULL, (header) => header.replaceAll(' ', '-'))],
    ['dots', headers(FULL, (header) => header.replaceAll(' ', '.'))],
    ['blanks around', headers(FULL, (header) => `  ${header} `)],
    ['a colon behind', headers(FULL, (header) => `${header}:`)],
    [
      'snake case with the unit behind',
      [
        ['club_speed_mph', IN.clubMph],
        ['ball_speed_mph', IN.ballMph],
        ['launch_angle_deg', IN.launch],
        ['spin_rate_rpm', IN.spin],
        ['carry_yd', IN.carryYd],
        ['apex_ft', IN.apexFt],
      ],
    ],
    [
      'camel case with the unit behind',
      [
        ['clubSpeedMph', IN.clubMph],
        ['ballSpeedMph', IN.ballMph],
        ['launchAngleDeg', IN.launch],
        ['spinRpm', IN.spin],
        ['carryYards', IN.carryYd],
      ],
    ],
    ['the unit behind a comma', headers(STATED, (header) => header.replace(' (', ', ').replace(')', ''))],
    ['the unit behind a blank', headers(STATED, (header) => header.replace('(', '').replace(')', ''))],
    ['the unit behind a slash', headers(STATED, (header) => header.replace(' (', ' / ').replace(')', ''))],
    ['square brackets', headers(STATED, (header) => header.replace('(', '[').replace(')', ']'))],
    ['no blank before the bracket', headers(STATED, (header) => header.replace(' (', '('))],
    ['a degree sign', renamed(STATED, { 'launch angle (deg)': 'launch angle (°)' })],
    [
      'short forms',
      renamed(FULL, { 'Club Speed': 'CHS', 'Launch Angle': 'VLA', 'Spin Rate': 'Spin', Apex: 'Height' }),
    ],
    [
      'abbreviations',
      renamed(FULL, {
        'Club Speed': 'Club Spd',
        'Ball Speed': 'Ball Spd',
        'Launch Angle': 'Launch Ang',
        Carry: 'Carry Dist',
      }),
    ],
    [
      'long forms',
      renamed(FULL, {
        'Club Speed': 'Clubhead Speed',
        'Launch Angle': 'Vertical Launch Angle',
        'Spin Rate': 'Total Spin',
        Carry: 'Carry Distance',
        Apex: 'Maximum Height',
      }),
    ],
    ['quotes around names', headers(STATED, (header) => `"${header}"`)],
    ['smash instead of ball speed', [FULL[0] as Columns[number], ['Smash', IN.smash], ...FULL.slice(2)]],
  ])('%s', (_name, columns) => {
    expectShots(table(columns, DRIVES));
  });

  it('a title above', () => {
    const read = expectShots(`Session report\nInvented player,3 May 2026\n\n${table(FULL, DRIVES)}`);
    expect(read.comments).toEqual(['Session report', 'Invented player, 3 May 2026']);
    expect(read.headerLine).toBe(4);
  });
  it.each([';', '\t'])('a line that names the separator %j', (separator) => {
    expectShots(`sep=${separator}\n${table(FULL, DRIVES, separator)}`);
  });
  it('a title with more commas than the table has semicolons', () => {
    expectShots(`a, b, c, d, e, f, g, h, i\n${table(FULL, DRIVES, ';')}`);
  });
  it('a row of units below', () => {
    const [head = '', ...rows] = table(METRIC, DRIVES).split('\n');
    const read = expectShots([head, 'km/h,km/h,deg,rpm,m,m', ...rows].join('\n'));
    expect(read.notes.filter((note) => note.includes('no unit'))).toEqual([]);
    expectShots([head, '[km/h],[km/h],[deg],[rpm],[m],[m]', ...rows].join('\n'));
    expectShots([head, '(km/h),(km/h),(°),(rpm),(m),', ...rows].join('\n'));
  });
  it('a row of units with blanks where there is none', () => {
    const [head = '', ...rows] = table([['Shot', () => '1'], ...METRIC], DRIVES).split('\n');
    expectShots([head, ',km/h,km/h,deg,rpm,m,m', ...rows].join('\n'));
  });
  it('names of the caller', () => {
    const odd = renamed(FULL, { 'Ball Speed': 'Ball V', 'Spin Rate': 'Drall' });
    expect(refusalOf(table(odd, DRIVES))).toMatch(/needs ball speed/);
    expectShots(table(odd, DRIVES), DRIVES, { columns: { 'Ball V': 'ball speed (mph)', Drall: 'spin' } });
    expect(refusalOf(table(odd, DRIVES), { columns: { Unknown: 'spin' } })).toMatch(
      /no column is called "Unknown"/,
    );
  });
  it('a column set aside by the caller', () => {
    const twice = plus(FULL, 'Carry ', IN.carryM);
    expectShots(table(twice, DRIVES), DRIVES, { columns: { Carry: 'carry (yd)' } });
    const doubled = table([...STATED, ['carry (m)', IN.carryM]], DRIVES);
    const read = expectShots(doubled, DRIVES, { columns: { 'carry (m)': 'not used' } });
    expect(read.shots[0]).toHaveProperty('carry');
  });
  it('a column twice: read once where both say the same or one is blank', () => {
    const twice = table([...FULL, ['Carry', IN.carryYd], ['Spin Rate', IN.spin]], DRIVES);
    const read = expectShots(twice, DRIVES, {}, ['ballSpeed', 'spinRate', 'carry', 'apex']);
    expect(read.rejected).toEqual([]);
    expect(read.notes.join(' ')).toMatch(/columns 5 and 7, "Carry", hold the same and are read as one/);
    const blank = table(
      [['Carry', (shot) => (DRIVES.indexOf(shot) % 2 === 0 ? '' : IN.carryYd(shot))], ...FULL],
      DRIVES,
    );
    expectShots(blank, DRIVES, {}, ['ballSpeed', 'spinRate', 'carry']);
    const shots = readShots(twice).aside;
    expect(shots.every((aside) => Object.keys(aside).length === 0)).toBe(true);
  });
  it('a column twice that differs: neither is used, and the note says in how many rows', () => {
    const differs = table(
      [...FULL, ['Carry', (shot) => IN.carryYd({ ...shot, carry: shot.carry + 9 })]],
      DRIVES,
    );
    const read = expectShots(differs, DRIVES);
    expect(read.shots.every(({ carry }) => carry === undefined)).toBe(true);
    expect(read.rejected[0]?.message).toMatch(
      new RegExp(
        `columns 5 and 7 both hold this quantity and differ in ${DRIVES.length} of ${DRIVES.length} rows`,
      ),
    );
  });
  it('shots of a thin place: the note says how far they miss in the air they were hit in', () => {
    const scene = { air: airAtAltitude({ altitude: metres(2200) }) };
    const high = DRIVES.map((shot) => {
      const { ball, launch, spin } = shot;
      const flight = fly({ ballSpeed: mph(ball), launchAngle: degrees(launch), spinRate: rpm(spin) }, scene);
      return { ...shot, carry: flight.carry / 0.9144, apex: flight.apex / 0.3048 };
    });
    const miss = (options: ReadShotsOptions): number => {
      const { notes } = readShots(table(FULL, high), options);
      return Number(/within (\d+) yd/.exec(notes[0] ?? '')?.[1]);
    };
    expect(miss({ scene })).toBeLessThan(3);
    expect(miss({})).toBeGreaterThan(miss({ scene }) + 5);
    expect(caught(() => readShots('a', { scene: { air: { density: -1 } } as never })).field).toBe(
      'options.scene.air.density',
    );
  });
  it('one more separator at the end of each row', () => {
    expectShots(table(FULL, DRIVES).replaceAll(/(\d)\n/g, '$1,\n'));
  });
  it('empty columns between', () => {
    expectShots(
      table([FULL[0] as Columns[number], ['', () => ''], ...FULL.slice(1), ['', () => '']], DRIVES),
    );
  });
  it('a header repeated between the shots', () => {
    const [head = '', first = '', ...rest] = table(STATED, DRIVES).split('\n');
    expectShots([head, first, head, ...rest].join('\n'));
  });
});

describe('cells as they come', () => {
  it.each<[string, Columns]>([
    [
      'units in cells',
      headers(
        written(
          written(FULL, 'Ball Speed', (t) => `${t} mph`),
          'Carry',
          (t) => `${t} yd`,
        ),
        (h) => h,
      ),
    ],
    [
      'units in cells without a blank',
      written(
        written(FULL, 'Club Speed', (t) => `${t}mph`),
        'Launch Angle',
        (t) => `${t}°`,
      ),
    ],
    ['units in cells where the header says the same', written(STATED, 'carry (yd)', (t) => `${t} yds`)],
    ['thousands with a comma', written(FULL, 'Spin Rate', thousands(','))],
    ['thousands with a blank', written(FULL, 'Spin Rate', thousands(' '))],
    ['thousands with an apostrophe', written(FULL, 'Spin Rate', thousands("'"))],
    ['thousands with a thin blank', written(FULL, 'Spin Rate', thousands('\u202f'))],
    ['thousands and a unit', written(FULL, 'Spin Rate', (t) => `${thousands(',')(t)} rpm`)],
    [
      'per cent under a header of per cent',
      plus(STATED, 'smash factor (%)', ({ smash }) => `${(100 * smash).toFixed(0)}%`),
    ],
    ['per cent in cells alone', plus(STATED, 'smash factor', ({ smash }) => `${(100 * smash).toFixed(0)} %`)],
    ['per cent and no sign of it', plus(STATED, 'smash factor', ({ smash }) => (100 * smash).toFixed(0))],
    [
      'a plus before',
      plus(STATED, 'attack angle (deg)', ({ attack }) => `${attack < 0 ? '' : '+'}${attack.toFixed(1)}`),
    ],
    [
      'a typographic minus',
      plus(STATED, 'attack angle (deg)', ({ attack }) => attack.toFixed(1).replace('-', '−')),
    ],
    [
      'sides behind',
      plus(STATED, 'side (yd)', (shot) => sided((size, side) => `${size}${side}`)(IN.sideYd(shot))),
    ],
    [
      'sides before',
      plus(STATED, 'side (yd)', (shot) => sided((size, side) => `${side}${size}`)(IN.sideYd(shot))),
    ],
    [
      'sides in words',
      plus(STATED, 'offline (yd)', (shot) =>
        sided((size, side) => `${size} ${side === 'L' ? 'left' : 'Right'}`)(IN.sideYd(shot)),
      ),
    ],
    [
      'sides and units',
      plus(STATED, 'offline', (shot) => sided((size, side) => `${size} yd ${side}`)(IN.sideYd(shot))),
    ],
    [
      'directions with sides',
      plus(STATED, 'launch direction (deg)', (shot) =>
        sided((size, side) => `${size}° ${side}`)(IN.direction(shot)),
      ),
    ],
    ['a header that explains the sides', plus(STATED, 'side (yd, L-/R+)', IN.sideYd)],
    [
      'tilts with sides',
      plus(STATED, 'spin axis', (shot) => sided((size, side) => `${side} ${size}`)(IN.tilt(shot))),
    ],
  ])('%s', (_name, columns) => {
    expectShots(table(columns, DRIVES));
  });

  it('units in cells are taken at their word', () => {
    const columns: Columns = [
      ['Ball Speed', (shot) => `${IN.ballKph(shot)} km/h`],
      ['Launch', (shot) => `${IN.launch(shot)} deg`],
      ['Spin', (shot) => `${IN.spin(shot)} rpm`],
      ['Carry', (shot) => `${IN.carryYd(shot)} yd`],
    ];
    expectShots(table(columns, DRIVES), DRIVES, {}, ['ballSpeed', 'carry']);
  });

  it('decimal commas between semicolons, thousands with points', () => {
    const text = table(written(FULL, 'Spin Rate', thousands('§')), DRIVES, ';')
      .replaceAll('.', ',')
      .replaceAll('§', '.');
    const read = expectShots(text);
    expect(read.notes).toContain('numbers are read with a decimal comma');
  });

  it.each<[string, string]>([
    ['a word', 'fail'],
    ['a side where there is none', '12.3L'],
    ['an error of a spreadsheet', '#REF!'],
    ['a number no apex can be', '99999'],
    ['a star behind', '88*'],
  ])('%s in a column that may be missing costs that cell', (_name, bad) => {
    const rows = table(FULL, DRIVES).split('\n');
    rows[2] = (rows[2] ?? '').replace(/[^,]*$/, bad);
    const read = expectShots(rows.join('\n'));
    expect(read.rejected).toMatchObject([{ scope: 'cell', line: 3, column: 'Apex' }]);
    expect(read.shots.filter((shot) => 'apex' in shot)).toHaveLength(DRIVES.length - 1);
  });

  it('a spoilt cell that the shot needs costs the shot', () => {
    const read = expectShots(
      table(STATED, DRIVES).replace(',2480,', ',error,'),
      DRIVES.filter(({ spin }) => spin !== 2480),
    );
    expect(read.rejected).toMatchObject([
      { scope: 'row', line: 3, column: 'spin (rpm)', reason: 'not-a-number' },
    ]);
  });

  it('a spoilt club speed does not cost a full launch', () => {
    expectShots(table(STATED, DRIVES).replace('\n95.3,', '\nn.m.,'));
  });

  it.each<[string, Columns, keyof MeasuredShot]>([
    ['club speeds', written(STATED, 'club speed (mph)', () => '0'), 'clubSpeed'],
    ['apexes', plus(STATED, 'apex (ft)', () => '0.0'), 'apex'],
    ['attack angles', plus(STATED, 'attack angle (deg)', () => '0'), 'attackAngle'],
    ['sides', plus(STATED, 'side (yd)', () => '0.00'), 'side'],
  ])('zero for all %s means not measured', (_name, columns, field) => {
    const read = expectShots(table(columns, DRIVES));
    expect(read.shots.every((shot) => !(field in shot))).toBe(true);
    expect(read.notes.join('\n')).toMatch(/every value is 0, which is taken as not measured/);
  });

  it('zero for one spin is not measured, zero for one attack angle is level', () => {
    const text = table(plus(STATED, 'attack angle (deg)', IN.attack), DRIVES);
    expectShots(
      text.replace(',2480,', ',0,'),
      DRIVES.filter(({ spin }) => spin !== 2480),
    );
    const level = readShots(text.replace(/,1\.2\n/, ',0.0\n')).shots[0];
    expect(level?.attackAngle).toBe(0);
  });

  it('control characters reach nobody', () => {
    const text = table(
      [['club', () => 'driver\u001b[2J'], ['weather\u0007', () => 'dry\u001b]0;x\u0007'], ...STATED],
      DRIVES,
    );
    const read = expectShots(`# made\u001b[31m up\n${text}`);
    expect(JSON.stringify(read)).not.toMatch(/\\u00[01]|\\u007f|\\u009b/);
    expect(read.shots[0]?.club).toBe('driver [2J');
  });

  it('a name of 20,000 characters is cut', () => {
    const read = expectShots(table([['club', () => 'x'.repeat(20_000)], ...STATED], DRIVES));
    expect(read.shots[0]?.club?.length).toBeLessThan(250);
  });
});

describe('rows that sum up', () => {
  const mean = (shots: readonly Shown[]): Shown =>
    summed(shots, (values) => values.reduce((a, b) => a + b, 0) / values.length);
  const deviation = (shots: readonly Shown[]): Shown =>
    summed(shots, (values) => {
      const middle = values.reduce((a, b) => a + b, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
    });
  const summed = (shots: readonly Shown[], of: (values: readonly number[]) => number): Shown =>
    Object.fromEntries(
      Object.keys(DRIVES[0] as Shown).map((name) => [
        name,
        of(shots.map((shot) => shot[name as keyof Shown])),
      ]),
    ) as unknown as Shown;
  const row = (name: string, shot: Shown, columns: Columns): string =>
    [name, ...columns.map(([, write]) => write(shot))].join(',');
  const numbered = (columns: Columns): Columns => [['Shot', () => '1'], ...columns];

  it.each(['Average', 'AVG', 'Mean', 'mean:', 'Ave.'])('called %s', (name) => {
    const read = expectShots(`${table(numbered(FULL), DRIVES)}${row(name, mean(DRIVES), FULL)}\n`);
    expect(read.rejected).toMatchObject([{ scope: 'row', reason: 'summary-row', line: 8 }]);
    expect(read.rowsRead).toBe(7);
  });
  it('average and deviation', () => {
    const bottom = [row('Average', mean(DRIVES), FULL), row('Std. Dev.', deviation(DRIVES), FULL)];
    expectShots(`${table(numbered(FULL), DRIVES)}${bottom.join('\n')}\n`);
  });
  it('average, deviation, best and count', () => {
    const best = DRIVES[0] as Shown;
    const bottom = [
      row('Average', mean(DRIVES), FULL),
      row('Deviation', deviation(DRIVES), FULL),
      row('Best', best, FULL),
      'Count,6,6,6,6,6,6',
    ];
    expectShots(`${table(numbered(FULL), DRIVES)}${bottom.join('\n')}\n`);
  });
  it('without a name, at the bottom', () => {
    const read = expectShots(`${table(numbered(FULL), DRIVES)}${row('', mean(DRIVES), FULL)}\n`);
    expect(read.rejected[0]?.message).toMatch(/the mean of 6 other rows/);
  });
  it('without a name, mean and deviation', () => {
    const bottom = [row('7', mean(DRIVES), FULL), row('8', deviation(DRIVES), FULL)];
    expectShots(`${table(numbered(FULL), DRIVES)}${bottom.join('\n')}\n`);
  });
  it('without a name, at the top', () => {
    const [head = '', ...rows] = table(numbered(FULL), DRIVES).split('\n');
    expectShots([head, row('', mean(DRIVES), FULL), ...rows].join('\n'));
  });
  it('one below each club', () => {
    const text = [
      table(numbered(FULL), DRIVES).trimEnd(),
      row('', mean(DRIVES), FULL),
      ...IRONS.map((shot) => row('1', shot, FULL)),
      row('', mean(IRONS), FULL),
    ].join('\n');
    expectShots(text, [...DRIVES, ...IRONS]);
  });
  it('a group called max or best is no summary', () => {
    const columns: Columns = [['band', ({ club }) => (club > 95 ? 'max' : 'best')], ...STATED];
    expectShots(table(columns, DRIVES));
  });
  it('the same shot three times is three shots', () => {
    const same = [DRIVES[0], DRIVES[0], DRIVES[0]] as readonly Shown[];
    expectShots(table(STATED, same), same);
  });
});

describe('words', () => {
  it('clubs, groups and sessions in any case and spacing are one', () => {
    const names = ['Driver', 'driver', 'DRIVER', ' driver ', '7 Iron', '7-iron'];
    let at = 0;
    const read = readShots(table([['club', () => names[at++] ?? ''], ...STATED], DRIVES));
    expect(read.shots.map(({ club }) => club)).toEqual([
      'Driver',
      'Driver',
      'Driver',
      'Driver',
      '7 Iron',
      '7 Iron',
    ]);
  });
  it.each([
    ['R', 'right'],
    ['right', 'right'],
    ['RH', 'right'],
    ['Left', 'left'],
    ['lh', 'left'],
    ['L', 'left'],
    ['left-handed', 'left'],
  ])('the hand %s', (text, hand) => {
    const read = expectShots(table([['hand', () => text], ...STATED], DRIVES));
    expect(read.shots.every((shot) => shot.hand === hand)).toBe(true);
  });
  it('a hand that is neither is said', () => {
    const read = expectShots(table([['handedness', () => 'both'], ...STATED], DRIVES));
    expect(read.rejected).toHaveLength(DRIVES.length);
    expect(read.rejected[0]).toMatchObject({ scope: 'cell', column: 'handedness' });
  });
  it.each<[string, string, string]>([
    ['ISO', '2026-05-03', '2026-05-03'],
    ['ISO with a time', '2026-05-03T14:20:00', '2026-05-03'],
    ['year first with slashes', '2026/5/3', '2026-05-03'],
    ['points', '03.05.2026', '2026-05-03'],
    ['day over 12 first', '23/05/2026', '2026-05-23'],
    ['day over 12 second', '05/23/2026', '2026-05-23'],
    ['two figures of a year', '23/05/26', '2026-05-23'],
    ['a month in words', '3 May 2026', '2026-05-03'],
    ['a month in words first', 'May 3, 2026', '2026-05-03'],
    ['a short month', '03-May-26', '2026-05-03'],
    ['a month in words with a time', 'May 23, 2026 2:20 PM', '2026-05-23'],
  ])('a date in %s', (_name, text, day) => {
    const read = expectShots(table([['date', () => text], ...STATED], DRIVES));
    expect(read.shots[0]?.date).toBe(day);
  });
  it('a date that may be two is day first, which is said, or as asked', () => {
    const text = table([['date', () => '03/05/2026'], ...STATED], DRIVES);
    const read = readShots(text);
    expect(read.shots[0]?.date).toBe('2026-05-03');
    expect(read.notes.join('\n')).toMatch(
      /"03\/05\/2026" is read as 2026-05-03, day first; it could be month first/,
    );
    expect(readShots(text, { dateOrder: 'month-first' }).shots[0]?.date).toBe('2026-03-05');
  });
  it('another date of the column settles the order', () => {
    let at = 0;
    const read = readShots(
      table([['date', () => (at++ === 0 ? '03/05/2026' : '03/25/2026')], ...STATED], DRIVES),
    );
    expect(read.shots[0]?.date).toBe('2026-03-05');
    expect(read.notes.join('\n')).not.toMatch(/day first/);
  });
  it.each(['spring', '31/02/2026', '2026-13-01', 'week 3'])('%s is no date and stays as it is', (text) => {
    expect(expectShots(table([['date', () => text], ...STATED], DRIVES)).shots[0]?.date).toBe(text);
  });
});
