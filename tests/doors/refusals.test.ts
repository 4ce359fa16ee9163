import { describe, expect, it } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { type FairflightError, isFairflightError } from '../../src/errors.js';
import { degrees, fly, flyMany, mph, playShot, rpm, strike } from '../../src/index.js';
import { caught } from '../caught.js';
import { changed, declaredVerdict, placesIn, WRONG } from './declared.js';
import type { Door } from './door.js';
import { doors } from './doors.js';

const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

/** Every refusal that wrong values anywhere in the arguments of a door lead to. */
async function refusalsOf(door: Door): Promise<readonly FairflightError[]> {
  const refusals: FairflightError[] = [];
  for (const [k, argument] of door.args.entries()) {
    const { field, valid } = argument;
    for (const { keys } of placesIn(field, valid)) {
      for (const wrong of [WRONG['long text'], undefined, Number.NaN, -1e9, WRONG['BigInt']]) {
        const value = changed(valid, keys, wrong);
        if (field.kind !== 'custom' && declaredVerdict(argument, value) === 'fine') continue;
        const args = door.args.map((arg, i) => (i === k ? value : arg.valid));
        try {
          await door.call(...args);
        } catch (error) {
          if (isFairflightError(error)) refusals.push(error);
        }
      }
    }
  }
  return refusals;
}

describe('a refusal', () => {
  it.each(doors.map((door) => [door.name, door] as const))(
    'is short and survives JSON: %s',
    async (_, door) => {
      for (const error of await refusalsOf(door)) {
        expect(error.message.length, error.message).toBeLessThan(1200);
        expect(error.message).not.toMatch(/undefined|\[object|NaN\)/);
        expect(error.message).not.toContain('x'.repeat(61));
        const told = JSON.parse(JSON.stringify(error)) as Record<string, unknown>;
        expect(told['message']).toBe(error.message);
        expect(told).toMatchObject({ code: error.code, field: error.field });
      }
    },
  );
  it('gives the range in SI and in the unit that people say', () => {
    expect(caught(() => fly({ ...launch, ballSpeed: mph(400) })).message).toBe(
      'launch.ballSpeed must be between 1 and 110 m/s (2.237 and 246.1 mph), got 178.8 m/s (400 mph)',
    );
  });
  it('offers the unit that a bare number may have been meant in, and only where that is allowed', () => {
    const bare = (ballSpeed: unknown) => caught(() => fly({ ...launch, ballSpeed } as never));
    expect(bare(150).hint).toBe('if 150 was meant as mph, pass mph(150)');
    for (const other of [900, -3, undefined, Number.NaN, '150', 150.123456789]) {
      expect(bare(other).hint).toBeUndefined();
    }
  });
  it('says that a field is missing', () => {
    const { spinRate: _, ...rest } = launch;
    expect(caught(() => fly(rest as never)).message).toMatch(/^launch\.spinRate is missing; it must be/);
  });
});

describe('whatever else may come in', () => {
  it('the error of a getter passes', async () => {
    const own = new Error('own');
    const thrower = {
      enumerable: true,
      get: (): never => {
        throw own;
      },
    };
    for (const door of doors) {
      for (const [k, { field, valid, read }] of door.args.entries()) {
        if (field.kind !== 'record' || read !== undefined) continue;
        const [name] = Object.keys(field.fields);
        const bad = Object.defineProperty({ ...(valid as object) }, name ?? '', thrower);
        const args = door.args.map((arg, i) => (i === k ? bad : arg.valid));
        const met = async (): Promise<unknown> => door.call(...args);
        await expect(met(), `${door.name} ${k}`).rejects.toBe(own);
      }
    }
  });
  it('a getter is asked once, so that what was checked is what is used', () => {
    let asked = 0;
    const changing = Object.defineProperty({ ...launch }, 'ballSpeed', {
      enumerable: true,
      get: () => (asked++ === 0 ? mph(150) : Number.NaN),
    });
    expect(fly(changing).carry).toBe(fly(launch).carry);
    expect(asked).toBe(1);
  });
  it('a proxy of a record is as good as the record', () => {
    expect(fly(new Proxy({ ...launch }, {})).carry).toBe(fly(launch).carry);
  });
  it('a record without a prototype is one, inherited fields are none', () => {
    expect(fly(Object.assign(Object.create(null), launch)).carry).toBe(fly(launch).carry);
    expect(caught(() => fly(Object.create(launch))).field).toBe('launch.ballSpeed');
  });
  it('a kernel that was not awaited is refused in words', () => {
    const launches = { ballSpeed: [60], launchAngle: [0.2], spinRate: [250] };
    const error = caught(() => flyMany(launches as never, {}, { kernel: loadBatchKernel() as never }));
    expect(error.field).toBe('options.kernel');
    expect(error.message).toContain('await');
  });
  it('columns of unequal length are refused by name', () => {
    const launches = { ballSpeed: [60, 61], launchAngle: [0.2], spinRate: [250, 250] };
    const error = caught(() => flyMany(launches as never));
    expect(error.field).toBe('launches.launchAngle');
    expect(error.message).toContain('1 rows');
  });
  it('a delivery and a launch in one are refused', () => {
    const delivery = { clubSpeed: mph(95), attackAngle: degrees(0), dynamicLoft: degrees(14) };
    expect(caught(() => playShot({ ...delivery, ...launch } as never)).field).toBe('from');
    expect(caught(() => strike({ ...delivery, ...launch } as never)).field).toBe('delivery.ballSpeed');
  });
});
