import { describe, expect, test } from 'vitest';
import { ALUMINIUM_MASS } from '../../../engine/gas/constants.ts';
import { erf } from '../../../engine/gas/erf.ts';
import {
  atomCrossSection,
  atomFreePath,
  collisionRate,
  DEFAULT_VAPOUR,
  firstFlightSurvival,
  gasFreePath,
  perFreePath,
  relativeSpeed,
  survivalDefect,
  vapourSpeeds,
} from '../../../engine/gas/freePath.ts';
import { componentsOf, DRY_AIR, GASES, pureGas, type GasName, type GasState } from '../../../engine/gas/gases.ts';
import { gasReport, meanVapourSpeed } from '../../../engine/gas/gasReport.ts';
import { flowRegime, vacuumRange } from '../../../engine/gas/regime.ts';
import { meanSpeed, probableSpeed } from '../../../engine/gas/speeds.ts';
import { oneSource, plantOf } from '../../support/plants.ts';
import { ROOM, VACUUM } from './gasScenes.ts';

const ROUNDING = 1e-12;
/** Simpson's rule of 400 steps over the speeds. */
const QUADRATURE = 1e-8;
/** Half of the tenth digit, and a little. */
const TEN_DIGITS = 1e-9;
/** The handbook’s two ways to air, its own diameter and its parts, differ by half a percent. */
const TWO_WAYS = 0.006;
const SIX_DIGITS = 1e-5;
/** Distance of a fast atom from the limit: (v_p/v)². */
const LIMIT = 1e-6;
const NAMES = Object.keys(GASES) as GasName[];
const close = (actual: number, expected: number, tolerance: number): void =>
  expect(Math.abs(actual / expected - 1)).toBeLessThan(tolerance);

test('the error function is that of the tables', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 7.1, ten digits
  for (const [x, value] of [
    [0, 0],
    [0.1, 0.112462916],
    [0.5, 0.5204998778],
    [1, 0.8427007929],
    [2, 0.995322265],
    [3, 0.9999779095],
  ] as const)
    expect(Math.abs(erf(x) - value)).toBeLessThan(TEN_DIGITS);
  expect(erf(7)).toBe(1);
});

describe('the free path of the gas', () => {
  test('goes with temperature over pressure', () => {
    const path = gasFreePath(pureGas('N2', 1, 300));
    close(gasFreePath(pureGas('N2', 2, 600)), path, ROUNDING);
    close(gasFreePath(pureGas('N2', 0.1, 300)), 10 * path, ROUNDING);
    expect(gasFreePath(VACUUM)).toBe(Infinity);
  });

  test('of a mixture of one gas with itself is that of the gas', () => {
    for (const name of NAMES)
      close(
        gasFreePath({ pressure: 1, temperature: ROOM, mixture: { [name]: 7 } }),
        gasFreePath(pureGas(name, 1, ROOM)),
        ROUNDING,
      );
  });

  test('of nitrogen, oxygen and argon as in air is that of air', () => {
    // the handbook's two ways to air: its own diameter, and its parts; they differ by half a percent
    close(
      gasFreePath({ pressure: 1, temperature: ROOM, mixture: DRY_AIR }),
      gasFreePath(pureGas('air', 1, ROOM)),
      TWO_WAYS,
    );
  });
});

describe('the free path of an aluminium atom', () => {
  const gas = pureGas('Ar', 1, ROOM);
  const [part] = componentsOf(gas);
  const perPath = part!.density * atomCrossSection(part!, DEFAULT_VAPOUR);

  test('is 1/nσ for a very fast atom and goes to zero with its speed', () => {
    close(atomFreePath(gas, 1e6, DEFAULT_VAPOUR) * perPath, 1, LIMIT);
    const rest = collisionRate(gas, 0);
    close(rest, perPath * meanSpeed(ROOM, part!.mass), ROUNDING);
    close(collisionRate(gas, 1e-3), rest, TEN_DIGITS);
    expect(atomFreePath(VACUUM, 1000)).toBe(Infinity);
  });

  test('at the temperature of the gas is on average 1/(nσ √(1 + m/M))', () => {
    // mean speed over mean rate, a Maxwell distribution over both
    const probable = probableSpeed(ROOM, ALUMINIUM_MASS);
    let [speed, rate] = [0, 0];
    for (let i = 1; i < 4000; i++) {
      const x = (8 * i) / 4000;
      const weight = x * x * Math.exp(-x * x);
      speed += weight * probable * x;
      rate += weight * collisionRate(gas, probable * x);
    }
    close((speed / rate) * perPath, 1 / Math.sqrt(1 + ALUMINIUM_MASS / part!.mass), QUADRATURE);
  });

  test('adds inverse paths in a mixture', () => {
    const mixture: GasState = { pressure: 4, temperature: ROOM, mixture: { Ar: 1, He: 3 } };
    const apart = 1 / atomFreePath(gas, 900) + 1 / atomFreePath(pureGas('He', 3, ROOM), 900);
    close(1 / atomFreePath(mixture, 900), apart, ROUNDING);
  });

  test('scales with the doubtful cross-section', () => {
    close(
      atomFreePath(gas, 900) / atomFreePath(gas, 900, { ...DEFAULT_VAPOUR, crossSectionScale: 1.25 }),
      1.25,
      ROUNDING,
    );
  });

  test('the relative speed has no seam between its two forms', () => {
    close(relativeSpeed(0.99999e-4), relativeSpeed(1.00001e-4), QUADRATURE);
  });
});

describe('the vapour that has met no molecule', () => {
  test('leaves with the speeds of atoms that cross a surface', () => {
    const { speeds, weights } = vapourSpeeds();
    const moment = (n: number): number => weights.reduce((sum, w, i) => sum + w * speeds[i]! ** n, 0);
    close(moment(1), meanVapourSpeed(DEFAULT_VAPOUR), QUADRATURE);
    close(moment(2), 2 * probableSpeed(1500, ALUMINIUM_MASS) ** 2, QUADRATURE);
    close(meanVapourSpeed(DEFAULT_VAPOUR), 1278.15, SIX_DIGITS); // by hand: ¾ √π √(2·1.380649e-23·1500·6.02214076e23/0.02698154)
  });

  test.each(NAMES)('falls in %s nearly as one exponential, and never faster than from the start', (name) => {
    const gas = pureGas(name, 1e-2, ROOM);
    const mean = perFreePath(gas);
    // bounds that the docstring of perFreePath promises
    const bound = name === 'H2' ? 0.027 : name === 'He' ? 0.018 : name === 'H2O' ? 0.005 : 0.0025;
    for (let x = 0.05; x < 6; x += 0.05) {
      const defect = survivalDefect(gas, x / mean, mean);
      expect(defect).toBeGreaterThanOrEqual(0); // Jensen: the mean of exponentials lies above the exponential of the mean
      expect(defect).toBeLessThan(bound);
      const reach = 1 / mean;
      expect(Math.abs(survivalDefect(gas, x / mean, perFreePath(gas, DEFAULT_VAPOUR, reach)))).toBeLessThan(bound / 2);
    }
  });

  test('is exact at the reach, and for a short reach the mean of the start', () => {
    const gas = pureGas('air', 1e-2, ROOM);
    expect(Math.abs(survivalDefect(gas, 1.3, perFreePath(gas, DEFAULT_VAPOUR, 1.3)))).toBeLessThan(ROUNDING);
    close(perFreePath(gas, DEFAULT_VAPOUR, 1e-5), perFreePath(gas), SIX_DIGITS);
    expect(firstFlightSurvival(gas, 0)).toBeCloseTo(1, 14);
    expect(perFreePath(VACUUM)).toBe(0);
    expect(firstFlightSurvival(VACUUM, 5)).toBeCloseTo(1, 14);
  });
});

describe('the door of the gas', () => {
  test.each([
    [{ pressure: -1, temperature: 300, mixture: { N2: 1 } }, 'pressure: expected'],
    [{ pressure: NaN, temperature: 300, mixture: { N2: 1 } }, 'pressure: expected'],
    [{ pressure: 1, temperature: 0, mixture: { N2: 1 } }, 'temperature: expected'],
    [{ pressure: 1, temperature: 300, mixture: {} }, 'mixture: expected'],
    [{ pressure: 1, temperature: 300, mixture: { N2: -0.1, O2: 1 } }, 'mixture.N2: expected'],
  ] as [GasState, string][])('refuses %j', (gas, saying) => {
    expect(() => componentsOf(gas)).toThrow(saying);
  });
});

test('regimes and ranges have one name on either side of each limit', () => {
  expect([0.0099, 0.0101, 0.499, 0.501].map(flowRegime)).toEqual([
    'viscous',
    'intermediate',
    'intermediate',
    'molecular',
  ]);
  expect([1e5, 2e4, 100, 0.1, 1e-3, 1e-7, 1e-10, 0].map(vacuumRange)).toEqual([
    'atmospheric pressure',
    'low (rough) vacuum',
    'medium (fine) vacuum',
    'high vacuum',
    'high vacuum',
    'ultra-high vacuum',
    'extreme-high vacuum',
    'perfect vacuum',
  ]);
});

test('the report of a plant is made of its parts', () => {
  const plant = plantOf({
    mirror: { radiusOfCurvature: 'flat', outerDiameter: '0.2 m' },
    tank: { diameter: '2 m', depth: '2 m' },
    ...oneSource([0, 0, 1], { law: 'isotropic' }),
    vacuum: { pressure: '1e-4 mbar', gas: 'N2', temperature: '20 degC' },
  });
  const report = gasReport(plant);
  // a point 1 m over a disc of 0.1 m radius: least 1, greatest √1.01, mean (2/3)(1.01^1.5 − 1)/0.01
  close(report.throw.least, 1, ROUNDING);
  close(report.throw.greatest, Math.sqrt(1.01), ROUNDING);
  close(report.throw.mean, (2 / 3) * ((1.01 ** 1.5 - 1) / 0.01), LIMIT);
  expect(report.vacuumRange).toBe('high vacuum');
  expect(report.regimes.map(({ what, regime }) => [what, regime])).toEqual([
    ['gas across the throw', 'molecular'],
    ['gas across the tank', 'intermediate'],
    ['vapour across the throw', 'molecular'],
  ]);
  close(report.regimes[1]!.knudsen, report.gasFreePath / 2, ROUNDING);
  close(Math.exp(-report.perFreePath * report.throw.mean), report.unscattered, TEN_DIGITS);
  close(report.vapourFreePath, atomFreePath(report.gas, 1278.15), SIX_DIGITS);
});
