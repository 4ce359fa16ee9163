import { describe, expect, it } from 'vitest';
import { fittedModern, scaledModel } from '../../src/aerodynamics/index.js';
import { airAt, airAtAltitude, windFrom } from '../../src/air/index.js';
import { balls } from '../../src/ball/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import type { Launch } from '../../src/scene/index.js';
import { playShot } from '../../src/shot/index.js';
import { type Delivery, locateStrike } from '../../src/strike/index.js';
import { type FactorName, sweepFactors } from '../../src/sweep/index.js';
import { turfs } from '../../src/turf/index.js';
import { degrees, metres, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { steadyDriver } from '../strike/helpers.js';

describe('the ranges of the factors', () => {
  const delivery = { clubSpeed: mph(90), attackAngle: degrees(0), dynamicLoft: degrees(20) };
  const launch = { ballSpeed: mph(130), launchAngle: degrees(20), spinRate: rpm(3000) };

  /** Plays a shot with one factor at a value, through the rooms' own checks. */
  function play(name: FactorName, value: number): void {
    const path = name.split('.');
    const set = <T>(record: T, keys: readonly string[]): T => {
      const [key = '', ...more] = keys;
      const old = (record as Record<string, unknown>)[key];
      return { ...record, [key]: more.length === 0 ? value : set(old ?? {}, more) };
    };
    const rest = path.slice(1);
    switch (path[0]) {
      case 'delivery':
        playShot(set({ ...delivery, strikeOffset: { toe: metres(0), high: metres(0) } }, rest) as Delivery);
        return;
      case 'clubhead': {
        const oblique = /limit|onset|scale/.test(name);
        const constant = name === 'clubhead.tangentialRestitution.value';
        const head = set(oblique ? clubheads.midIron : constant ? steadyDriver : clubheads.driver, rest);
        playShot(delivery, {}, { clubhead: head });
        return;
      }
      case 'launch':
        playShot(set(launch, rest) as Launch);
        return;
      case 'air':
        if (name === 'air.altitude') airAtAltitude({ altitude: metres(value) });
        else if (/density|viscosity/.test(name)) playShot(launch, { air: set(airAt(), rest) });
        else airAt(set({}, rest));
        return;
      case 'wind':
        if (/profile/.test(name)) {
          const kind = /exponent/.test(name)
            ? { kind: 'power', exponent: 0.1 }
            : { kind: 'log', roughness: 0.03 };
          const high = name === 'wind.profile.displacement' || name === 'wind.profile.roughness';
          const base = { along: 1, across: 0, profile: { ...kind, referenceHeight: high ? 100 : 10 } };
          playShot(launch, { wind: set(base, rest) as never });
        } else if (/speed|from/.test(name)) windFrom(set({ speed: 5, from: 0 }, rest) as never);
        else playShot(launch, { wind: set({ along: 0, across: 0 }, rest) as never });
        return;
      case 'turf':
        playShot(launch, {
          turf: set(/tiltCap|Scale$/.test(name) ? turfs.pennerNormal : turfs.normal, rest),
        });
        return;
      case 'aerodynamics':
        if (name === 'aerodynamics.spinDecay')
          playShot(launch, { aerodynamics: { ...fittedModern, id: 'mine', spinDecay: value } });
        else playShot(launch, { aerodynamics: scaledModel(fittedModern, { [name.slice(13, 17)]: value }) });
        return;
      case 'readingError':
        // Told apart by its sign; the size is that of a reading's error.
        locateStrike({ ...delivery, ...launch }, { readingErrors: { [rest[0] ?? '']: Math.abs(value) } });
        return;
      case 'ground':
        playShot(launch, { ground: set({}, rest) });
        return;
      default:
        playShot(delivery, { ball: set(balls.conforming, rest) });
    }
  }

  const names = Object.keys(sweepFactors) as FactorName[];
  it.each(names)('%s: is what the rooms accept, and no more', (name) => {
    const { min, max } = sweepFactors[name];
    const step = 1e-6 * Math.max(Math.abs(min), Math.abs(max));
    for (const beyond of [min - step, max + step]) {
      expect(
        caught(() => play(name, beyond)),
        `${name} ${beyond}`,
      ).toMatchObject({ code: 'outside-range' });
    }
    for (const end of [min, max]) {
      try {
        play(name, end);
      } catch (error) {
        // The end itself may make a strike or a flight that cannot be computed, but not for its own range.
        expect((error as { range: unknown }).range).not.toEqual([min, max]);
      }
    }
  });
});
