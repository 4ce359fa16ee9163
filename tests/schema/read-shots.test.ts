import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import { fly } from '../../src/flight/index.js';
import { readShots } from '../../src/schema/index.js';
import {
  degrees,
  metres,
  metresPerSecond,
  rpm,
  toDegrees,
  toFeet,
  toMph,
  toRpm,
  toYards,
} from '../../src/units/index.js';

const HEADER =
  'club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd),apex (ft),descent angle (deg)';
const GOOD = '96,142,12.4,2600,232,88,37';
const file = (...lines: readonly string[]): string => [HEADER, ...lines].join('\n');

/** The one complaint about the middle row of three; the other two must survive. */
const complaint = (row: string): { line: number; column: string; reason: string; message: string } => {
  const table = readShots(file(GOOD, row, GOOD));
  expect(table.shots).toHaveLength(2);
  expect(table.rowsRead).toBe(3);
  expect(table.rowsLeftOut).toBe(1);
  expect(table.rejected).toHaveLength(1);
  const [only] = table.rejected;
  if (only === undefined) throw new Error('no complaint');
  expect(only.scope).toBe('row');
  return only;
};

const refusal = (text: string): string => {
  try {
    readShots(text);
  } catch (error) {
    if (isFairflightError(error) && error.code === 'invalid-input') return error.message;
    throw error;
  }
  throw new Error('the file was accepted');
};

describe('a good file', () => {
  it('gives SI quantities with the line they come from', () => {
    const { shots, rejected, notes, rowsRead, rowsLeftOut } = readShots(file(GOOD));
    const [shot] = shots;
    // International yard and pound agreement, 1959: 1 mph = 0.44704 m/s, 1 yd = 0.9144 m, 1 ft = 0.3048 m.
    expect(shot?.clubSpeed).toBeCloseTo(96 * 0.44704, 12);
    expect(shot?.carry).toBeCloseTo(232 * 0.9144, 12);
    expect(shot?.apex).toBeCloseTo(88 * 0.3048, 12);
    expect(shot?.launchAngle).toBeCloseTo((12.4 * Math.PI) / 180, 12);
    expect(shot?.spinRate).toBeCloseTo((2600 * Math.PI) / 30, 10);
    expect(shot?.line).toBe(2);
    expect([rejected, notes, rowsRead, rowsLeftOut]).toEqual([[], [], 1, 0]);
  });

  it('says what each column was read as, in which unit, and where they stood', () => {
    const table = readShots(`# mine\nSpin (rpm),Ball_Speed (mph),launch (deg),weather\n2600,142,12.4,dry\n`);
    expect(table.headerLine).toBe(2);
    expect(table.columns).toEqual([
      { header: 'Spin (rpm)', field: 'spinRate', unit: 'rpm' },
      { header: 'Ball_Speed (mph)', field: 'ballSpeed', unit: 'mph' },
      { header: 'launch (deg)', field: 'launchAngle', unit: 'deg' },
      { header: 'weather' },
    ]);
  });

  it('takes any order, any unit per column, and names in any case with _ or - for blanks', () => {
    const text = 'SPIN-rate [rev/s],Ball_Speed (km/h),launch angle (rad),Carry (m)\n45,230.4,0.2094,212\n';
    const [shot] = readShots(text).shots;
    if (shot?.ballSpeed === undefined || shot.spinRate === undefined || shot.launchAngle === undefined) {
      throw new Error('missing');
    }
    expect(shot.ballSpeed).toBeCloseTo(64, 10);
    expect(toRpm(shot.spinRate)).toBeCloseTo(2700, 8);
    expect(toDegrees(shot.launchAngle)).toBeCloseTo(11.998, 3);
    expect(shot.carry).toBe(212);
  });

  it('keeps unknown columns aside and says so', () => {
    const { shots, aside, notes, rejected } = readShots(`${HEADER},weather,tee height\n${GOOD},sunny,tall\n`);
    expect(shots).toHaveLength(1);
    expect(aside).toEqual([{ weather: 'sunny', 'tee height': 'tall' }]);
    expect(notes).toEqual([
      'column "weather" is kept aside and not used',
      'column "tee height" is kept aside and not used',
    ]);
    expect(rejected).toEqual([]);
  });

  it('reads text columns', () => {
    const text = `${HEADER},band,session,date,club\n${GOOD},fast,one,2026-03-01,driver\n`;
    expect(readShots(text).shots[0]).toMatchObject({
      label: 'fast',
      session: 'one',
      date: '2026-03-01',
      club: 'driver',
    });
  });

  it('is content with ball speed, launch angle and spin', () => {
    expect(readShots('ball speed (mph),launch angle (deg),spin (rpm)\n142,12.4,2600\n').shots).toHaveLength(
      1,
    );
  });

  it('is content with club speed, attack angle and loft', () => {
    const table = readShots('club speed (mph),attack angle (deg),loft (deg)\n96,1.5,10.5\n');
    expect(table.shots).toHaveLength(1);
    expect(table.shots[0]?.nominalLoft).toBeCloseTo((10.5 * Math.PI) / 180, 12);
  });

  it('is content with club speed alone when asked, and with nothing less', () => {
    const { shots, rejected } = readShots('club speed (mph),carry (yd)\n96,\n,232\n', {
      needs: 'club-speed',
    });
    expect(shots).toHaveLength(1);
    expect(rejected[0]).toMatchObject({ line: 3, reason: 'missing-value' });
    expect(rejected[0]?.message).toBe('a value is missing (club speed): a shot needs club speed');
    expect(refusal('club speed (mph)\n96\n')).toMatch(/ball speed, launch angle and spin/);
  });

  it('works out ball speed from smash factor, and spin from its two parts, and says so', () => {
    const text =
      'club speed (mph),smash factor,launch angle (deg),backspin (rpm),sidespin (rpm)\n100,1.48,11,2400,700\n';
    const { shots, notes } = readShots(text);
    const [shot] = shots;
    if (shot?.ballSpeed === undefined || shot.spinRate === undefined || shot.spinAxisTilt === undefined) {
      throw new Error('missing');
    }
    expect(toMph(shot.ballSpeed)).toBeCloseTo(148, 10);
    expect(toRpm(shot.spinRate)).toBeCloseTo(2500, 8);
    expect(toDegrees(shot.spinAxisTilt)).toBeCloseTo(16.26, 2);
    expect(notes).toHaveLength(2);
  });

  it('takes blank cells and the usual signs for "not measured"', () => {
    const { shots, rejected } = readShots(file('96,142,12.4,2600,,-,n/a'));
    expect(rejected).toEqual([]);
    expect(shots[0]?.carry).toBeUndefined();
    expect(shots[0]?.descentAngle).toBeUndefined();
  });

  it('returns comment lines and still counts lines from the top', () => {
    const table = readShots(
      `# invented player\n\n# invented place\n${file('96,x,12.4,2600,232,88,37', GOOD)}`,
    );
    expect(table.comments).toEqual(['invented player', 'invented place']);
    expect(table.rejected[0]?.line).toBe(5);
    expect(table.shots[0]?.line).toBe(6);
  });

  it('skips rows of separators only, with a note', () => {
    const table = readShots(file(GOOD, ',,,,,,', ' , ,,,,,'));
    expect([table.rowsRead, table.rowsLeftOut]).toEqual([1, 0]);
    expect(table.notes).toEqual(['2 blank rows are skipped']);
    expect(readShots(file(GOOD, ',,,,,,')).notes).toEqual(['1 blank row is skipped']);
  });
});

describe('how files are written', () => {
  const expectGood = (text: string, notes: readonly string[] = []): void => {
    const table = readShots(text);
    expect(table.rejected).toEqual([]);
    expect(table.shots).toHaveLength(2);
    expect(table.notes).toEqual(notes);
    const [shot] = table.shots;
    if (shot?.launchAngle === undefined || shot.carry === undefined || shot.apex === undefined) {
      throw new Error('missing');
    }
    expect(toDegrees(shot.launchAngle)).toBeCloseTo(12.4, 10);
    expect(toYards(shot.carry)).toBeCloseTo(232, 10);
    expect(toFeet(shot.apex)).toBeCloseTo(88, 10);
  };

  it('reads a byte-order mark', () => expectGood(`\uFEFF${file(GOOD, GOOD)}`));
  it('reads Windows line ends', () => expectGood(file(GOOD, GOOD).replaceAll('\n', '\r\n')));
  it('reads old line ends', () => expectGood(file(GOOD, GOOD).replaceAll('\n', '\r')));
  it('reads quoted fields', () => expectGood(file(GOOD, GOOD).replaceAll(/[^,\n]+/g, '"$&"')));
  it('reads semicolons', () =>
    expectGood(file(GOOD, GOOD).replaceAll(',', ';'), ['fields are separated by semicolons']));
  it('reads tabs', () =>
    expectGood(file(GOOD, GOOD).replaceAll(',', '\t'), ['fields are separated by tabs']));
  it('reads semicolons with decimal commas', () => {
    const text = file(GOOD, GOOD).replaceAll(',', ';').replaceAll('.', ',');
    expectGood(text, ['fields are separated by semicolons', 'numbers are read with a decimal comma']);
  });
  it('reads quoted decimal commas between commas', () => {
    expectGood(file(GOOD, GOOD).replaceAll('12.4', '"12,4"'), ['numbers are read with a decimal comma']);
  });
  it('reads a typographic minus and a plus', () => {
    const text =
      'ball speed (mph),launch angle (deg),spin (rpm),attack angle (deg),side (yd)\n142,12,2600,−1.5,+4\n';
    const [shot] = readShots(text).shots;
    expect(shot?.attackAngle).toBeCloseTo((-1.5 * Math.PI) / 180, 12);
    expect(shot?.side).toBeCloseTo(4 * 0.9144, 12);
  });
  it('keeps line numbers right behind quoted line ends', () => {
    const text = `${HEADER},remark\n${GOOD},"first\nsecond"\n96,abc,12.4,2600,232,88,37,x\n${GOOD},y\n`;
    const table = readShots(text);
    expect(table.rejected).toMatchObject([{ line: 4, column: 'ball speed (mph)', reason: 'not-a-number' }]);
    expect(table.shots.map(({ line }) => line)).toEqual([2, 5]);
  });
});

describe('bad rows: the reason, the line and the column are named, the good rows are used', () => {
  it.each([
    [
      'text in a number',
      '96,fast,12.4,2600,232,88,37',
      'ball speed (mph)',
      'not-a-number',
      /"fast" is not a number/,
    ],
    [
      'a side letter',
      '96,142,12.4R,2600,232,88,37',
      'launch angle (deg)',
      'not-a-number',
      /left and right are no part/,
    ],
    [
      'a stray decimal comma',
      '96,142,"12,4",2600,232,88,37',
      'launch angle (deg)',
      'not-a-number',
      /writes decimals with "\."/,
    ],
    [
      'spin -200',
      '96,142,12.4,-200,232,88,37',
      'spin (rpm)',
      'impossible-value',
      /-200 rpm is impossible.* 0 and 16000 rpm/,
    ],
    ['infinity', '96,1e999,12.4,2600,232,88,37', 'ball speed (mph)', 'impossible-value', /impossible/],
    [
      'smash 1.8',
      '96,172.8,12.4,2600,,,',
      'ball speed (mph)',
      'contradiction',
      /smash factor 1\.80 .*no face can give/,
    ],
    [
      'the two speeds exchanged',
      '142,96,12.4,2600,,,',
      'ball speed (mph)',
      'contradiction',
      /the two columns exchanged, which would give 1\.48/,
    ],
    [
      'ball speed in km/h',
      '96,228.5,12.4,2600,232,88,37',
      'ball speed (mph)',
      'contradiction',
      /ball speed in km\/h with club speed in mph would give 1\.48/,
    ],
    [
      'ball speed in m/s',
      '96,63.5,12.4,2600,,,',
      'ball speed (mph)',
      'contradiction',
      /ball speed in m\/s with club speed in mph would give 1\.48/,
    ],
    [
      'club speed in m/s',
      '42.9,142,12.4,2600,232,88,37',
      'ball speed (mph)',
      'contradiction',
      /club speed in m\/s would give 1\.48/,
    ],
    ['spin in rad/s', '96,142,12.4,272,232,88,37', 'spin (rpm)', 'contradiction', /the column is in rad\/s/],
    [
      'launch beyond upright',
      '96,142,124,2600,232,88,37',
      'launch angle (deg)',
      'impossible-value',
      /between -30 and 80 deg/,
    ],
    [
      'both speeds in m/s',
      '42.9,63.5,12.4,2600,232,88,37',
      'carry (yd)',
      'contradiction',
      /further than a ball at 64 mph flies/,
    ],
    ['a missing value', '96,142,12.4,,232,88,37', '', 'missing-value', /spin/],
    ['a cell too few', '96,142,12.4,2600,232,88', '', 'malformed-row', /6 fields where the header has 7/],
    [
      'a cell too many',
      '96,142,12,4,2600,232,88,37',
      '',
      'malformed-row',
      /decimal comma needs another separator/,
    ],
    ['an open quote', '96,142,"12.4,2600,232,88,37', '', 'malformed-row', /never closed/],
    ['the header again', HEADER, '', 'unclear-header', /repeated/],
  ])('%s', (_name, row, column, reason, message) => {
    const found = complaint(row);
    expect(found.line).toBe(3);
    expect(found.column).toBe(column);
    expect(found.reason).toBe(reason);
    expect(found.message).toMatch(message);
  });

  it.each([
    ['carry in feet', '96,142,12.4,2600,696,264,37', 'carry (yd)', /if the column is in ft, say so/],
    ['apex in inches', '96,142,12.4,2600,232,1056,37', 'apex (ft)', /if the column is in in, say so/],
    [
      'text in a column that can be missing',
      '96,142,12.4,2600,232,high,37',
      'apex (ft)',
      /"high" is not a number/,
    ],
    ['an apex below the parabola', '96,142,12.4,2600,232,8,37', 'apex (ft)', /too low/],
  ])('%s costs the cell and not the shot', (_name, row, column, message) => {
    const table = readShots(file(GOOD, row, GOOD));
    expect(table.shots).toHaveLength(3);
    expect(table.rowsLeftOut).toBe(0);
    expect(table.rejected).toMatchObject([{ scope: 'cell', line: 3, column }]);
    expect(table.rejected[0]?.message).toMatch(message);
    const field = column.startsWith('carry') ? 'carry' : 'apex';
    expect(table.shots.map((shot) => field in shot)).toEqual([true, false, true]);
  });

  it('smash factor 1.8 in its own column', () => {
    const text =
      'club speed (mph),smash factor,launch angle (deg),spin (rpm)\n96,1.8,12,2600\n96,1.48,12,2600\n';
    const { rejected, shots } = readShots(text);
    expect(shots).toHaveLength(1);
    expect(rejected).toMatchObject([{ line: 2, column: 'smash factor', reason: 'impossible-value' }]);
  });

  it('a smash factor that its speeds do not give', () => {
    const text =
      'club speed (mph),ball speed (mph),smash factor,launch angle (deg),spin (rpm)\n96,142,1.40,12,2600\n';
    const { rejected, shots } = readShots(text);
    expect(shots).toHaveLength(0);
    expect(rejected[0]?.message).toMatch(/says smash factor 1\.40, its speeds give smash factor 1\.48/);
  });

  it('an apex column whose unit betrays itself is set aside, its rows are kept', () => {
    for (const apex of ['29.3', '290']) {
      const table = readShots(file(...[0, 1, 2].map(() => GOOD.replace(',88,', `,${apex},`))));
      expect(table.shots).toHaveLength(3);
      expect(table.shots.every((shot) => !('apex' in shot))).toBe(true);
      expect(table.rejected).toMatchObject([
        { scope: 'column', reason: 'contradiction', line: 1, column: 'apex (ft)' },
      ]);
    }
  });

  it('keeps the apex of a slow, low drive to a landing 2 m below the tee: hardly more than a parabola', () => {
    const flight = fly(
      { ballSpeed: metresPerSecond(43.5), launchAngle: degrees(10.7), spinRate: rpm(2287) },
      { ground: { elevation: metres(-2) } },
    );
    const cells = [43.5, 10.7, 2287, flight.carry, flight.apex, toDegrees(flight.descentAngle)];
    const row = cells.map((cell) => cell.toFixed(3)).join(',');
    const header = 'ball speed (m/s),launch (deg),spin (rpm),carry (m),apex (m),descent (deg)';
    expect(readShots([header, row, row, row].join('\n')).rejected).toEqual([]);
  });

  it('a launch column in radians', () => {
    const rows = ['0.21', '0.20', '0.19'].map((launch) => GOOD.replace('12.4', launch));
    expect(refusal(file(...rows))).toMatch(
      /^line 1, column "launch angle \(deg\)": .*read as rad they agree/,
    );
  });

  it('total in metres beside carry in feet, hang time in another unit', () => {
    const text =
      'ball speed (mph),launch angle (deg),spin (rpm),carry (yd),total (yd),hang time (s)\n142,12,2600,232,180,6\n142,12,2600,232,250,0.6\n';
    expect(readShots(text).rejected).toMatchObject([
      { line: 2, column: 'total (yd)' },
      { line: 3, column: 'hang time (s)' },
    ]);
  });

  it('lists every trouble of a row but counts the row once', () => {
    const table = readShots(file('96,fast,12.4,-200,232,88,37', GOOD));
    expect(table.rejected).toHaveLength(2);
    expect(table.rowsLeftOut).toBe(1);
  });

  it('returns no shots, and every reason, when all rows are bad', () => {
    const table = readShots(file('a,b,c,d,e,f,g', '1,2'));
    expect(table.shots).toEqual([]);
    expect(table.rowsLeftOut).toBe(2);
    expect(table.rejected).toHaveLength(8);
  });
});

describe('bad headers', () => {
  it('sets a doubled column aside, names both places, and uses the rest', () => {
    const table = readShots(`${HEADER},carry (m)\n${GOOD},212\n`);
    expect(table.shots).toHaveLength(1);
    expect(table.shots[0]?.carry).toBeUndefined();
    expect(table.rejected).toMatchObject([
      { scope: 'column', reason: 'unclear-header', line: 1, column: 'carry (yd)' },
      { scope: 'column', reason: 'unclear-header', line: 1, column: 'carry (m)' },
    ]);
    expect(table.rejected[0]?.message).toMatch(/columns 5 and 8/);
    expect(table.rowsLeftOut).toBe(0);
  });
  it('refuses the file when the doubled column is needed', () => {
    const message = refusal('ball speed (mph),launch angle (deg),spin (rpm),spin (rpm)\n142,12,2600,2700\n');
    expect(message).toMatch(
      /^line 1: a shot needs .*column "spin \(rpm\)": columns 3 and 4 both hold this quantity/,
    );
  });
  it('sets a column with a unit of another kind aside and says how to write it', () => {
    const table = readShots(`${HEADER.replace('(ft)', '(mph)')}\n${GOOD}\n`);
    expect(table.shots).toHaveLength(1);
    expect(table.rejected).toMatchObject([
      { scope: 'column', reason: 'unknown-unit', line: 1, column: 'apex (mph)' },
    ]);
    expect(table.rejected[0]?.message).toMatch(/"mph" is not a unit of length/);
  });
  it.each([
    ['an empty file', '', /empty/],
    ['blanks only', ' \r\n\n', /empty/],
    ['a byte-order mark only', '\uFEFF', /empty/],
    ['comments only', '# nothing\n# here\n', /empty/],
    ['no known column', 'a,b,c\n1,2,3\n', /line 1: a shot needs .* the columns are "a", "b", "c"/],
    ['numbers where the header should be', '96,142,12\n97,143,12\n', /a shot needs/],
    ['columns that are not enough', 'club speed (mph),carry (yd)\n96,232\n', /a shot needs/],
    ['UTF-16', 'b\0a\0l\0l\0', /not UTF-8/],
    ['a header that never closes its quote', '"ball speed (mph),launch\n1,2\n', /header cannot be read/],
  ])('refuses %s', (_name, text, message) => {
    expect(refusal(text)).toMatch(message);
  });
  it('says when there are no rows', () => {
    expect(readShots(HEADER)).toMatchObject({
      shots: [],
      rowsRead: 0,
      notes: ['there are no rows below the header'],
    });
  });
  it('lets the caller fix separator and decimal mark', () => {
    const text = 'ball speed (mph);launch angle (deg);spin (rpm)\n142;12;2,600\n';
    expect(readShots(text, { decimalMark: ',' }).rejected[0]?.reason).toBe('contradiction');
    expect(toRpm(readShots(text).shots[0]?.spinRate ?? rpm(0))).toBeCloseTo(2600, 8);
    expect(refusal(text.replaceAll(';', '|'))).toMatch(/a shot needs/);
  });
});
