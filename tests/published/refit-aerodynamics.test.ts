import { describe, expect, it } from 'vitest';
import {
  chiSquare,
  FITTED,
  flightMisses,
  flyBy,
  missOf,
  refit,
  rms,
  rounded,
} from '../../src/aerodynamics/build-time/fit.js';
import {
  coefficientRows,
  type FlightFigure,
  flightRows,
} from '../../src/aerodynamics/build-time/fit-rows.js';
import { bandShares, carryError, leaveOneOut } from '../../src/aerodynamics/build-time/leave-one-out.js';
import { BAND_SHARES, carryShare } from '../../src/aerodynamics/carry-band.js';
import { fittedModern, fittedModernConstants as shipped } from '../../src/aerodynamics/index.js';
import { balls } from '../../src/ball/index.js';

const tours = flightRows.filter(({ source }) => source === 'Tour averages');
const missesOf = (figure: FlightFigure): number[] =>
  tours.map(
    (row) => flightMisses(shipped, row)[row.figures.findIndex((f) => f.figure === figure)] ?? Number.NaN,
  );

describe('the default coefficients and the rows they were fitted to', () => {
  it('uses 52 coefficients, sixteen tour averages and two flights of a patent', () => {
    expect(coefficientRows).toHaveLength(52);
    expect(tours).toHaveLength(16);
    expect(flightRows).toHaveLength(18);
  });
  it('is found again by the fit, to the printed digit', () => {
    expect(rounded(refit().fit.constants)).toEqual(shipped);
  });
  it('does not hang on where the fit starts', () => {
    const away = {
      liftOnset: 0.06,
      liftRise: 0.35,
      liftScale: 0.2,
      dragFloor: 0.25,
      dragRise: 0.2,
      dragScale: 0.2,
    };
    expect(rounded(refit(undefined, { ...shipped, ...away }).fit.constants)).toEqual(shipped);
    expect(Object.keys(away)).toEqual(FITTED);
  });
  it('leaves chi-square 0.65 per coefficient; 0.49 without any flight', () => {
    expect(chiSquare(shipped, coefficientRows)).toBeCloseTo(0.65, 2);
    expect(chiSquare(refit().coefficientsOnly.constants, coefficientRows)).toBeCloseTo(0.49, 2);
  });
  it('has lift within the scatter of the sources at spin ratios of 0.02 to 0.08', () => {
    const small = coefficientRows.filter(
      ({ coefficient, spinRatio }) => coefficient === 'lift' && spinRatio <= 0.08,
    );
    expect(small).toHaveLength(6);
    for (const row of small) expect(Math.abs(missOf(shipped, row)), row.id).toBeLessThan(row.spread);
  });
  it('leaves carry 3.3 yd, apex 2.4 yd and landing 3.7° over on the tour averages, root mean square', () => {
    expect(rms(missesOf('carry'))).toBeCloseTo(3.29, 1);
    expect(rms(missesOf('apex'))).toBeCloseTo(2.36, 1);
    expect(rms(missesOf('descent'))).toBeCloseTo(3.75, 1);
    expect(Math.max(...missesOf('carry').map(Math.abs))).toBeLessThan(6);
  });
  it('flies the patent’s two drives inside its ranges of carry, hang time and descent', () => {
    const patent = flightRows.filter(({ source }) => source !== 'Tour averages');
    expect(patent).toHaveLength(2);
    for (const row of patent) {
      expect(row.figures).toHaveLength(3);
      // The range is two spreads either way.
      flightMisses(shipped, row).forEach((miss, i) => {
        expect(Math.abs(miss), `${row.id} ${row.figures[i]?.figure}`).toBeLessThan(
          2 * (row.figures[i]?.spread ?? 0),
        );
      });
    }
  });
  it('says in its source what is left over', () => {
    expect(fittedModern.source.note).toContain('chi-square 0.65 per coefficient');
    expect(fittedModern.source.note).toContain('carry 3.3 yd, apex 2.4 yd, landing 3.7°');
  });
});

describe('the band of carry', () => {
  const all = [...leaveOneOut().values()];

  it('is what leaving out each source gives', () => {
    expect(bandShares(all)).toEqual(BAND_SHARES);
  });
  it('is as wide as what leaving out gives for the flights fitted, root mean square', () => {
    const ratios = flightRows.map(({ launch }) => {
      const spinRatio = (balls.conforming.radius * launch.spinRate) / launch.ballSpeed;
      const error = carryError(all, launch.ballSpeed, spinRatio, (launch.launchAngle * 180) / Math.PI);
      return error / (carryShare(launch.ballSpeed, spinRatio) ?? Number.NaN);
    });
    expect(rms(ratios)).toBeGreaterThan(0.8);
    expect(rms(ratios)).toBeLessThan(1.1);
  });
  it('holds at least 90 % of the flights flown without one source', () => {
    const shares = flightRows.flatMap(({ launch, air }) => {
      const spinRatio = (balls.conforming.radius * launch.spinRate) / launch.ballSpeed;
      const { carry } = flyBy(shipped, launch, air);
      const band = carry * (carryShare(launch.ballSpeed, spinRatio) ?? Number.NaN);
      return all.map((constants) => Math.abs(flyBy(constants, launch, air).carry - carry) / band);
    });
    expect(shares).toHaveLength(7 * 18);
    expect(shares.filter((share) => share <= 1).length / shares.length).toBeGreaterThanOrEqual(0.9);
    expect(Math.max(...shares)).toBeLessThan(1.6);
  });
  it('meets its nodes, runs straight between them and is held beyond', () => {
    expect(carryShare(65, 0.1)).toBe(0.015);
    expect(carryShare(55, 0.1)).toBeCloseTo(0.0125, 12);
    expect(carryShare(65, 0.15)).toBeCloseTo(0.014, 12);
    expect(carryShare(24.9, 0.1)).toBeUndefined();
    expect(carryShare(65, 0.81)).toBeUndefined();
    expect(carryShare(85, 0.8)).toBe(0.102);
  });
});
