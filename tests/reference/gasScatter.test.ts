/** Scattering in gas against closed forms: survival, relaxation, diffusion. */
import { describe, expect, test } from 'vitest';
import {
  attemptCollision,
  createAtom,
  DIRECTION,
  drawFlight,
  encountersOf,
  SPEED,
  thermalise,
} from '../../engine/gas/collisions.ts';
import { AVOGADRO, BOLTZMANN, ALUMINIUM_MASS } from '../../engine/gas/constants.ts';
import { diffusionCoefficient, secondApproximation } from '../../engine/gas/diffusion.ts';
import { atomCrossSection, DEFAULT_VAPOUR } from '../../engine/gas/freePath.ts';
import { componentsOf, GASES, pureGas, type GasName, type GasState } from '../../engine/gas/gases.ts';
import { createRandom, keyInto } from '../../engine/gas/random.ts';
import { prepareScatter } from '../../engine/gas/scatterProblem.ts';
import { summarise } from '../../engine/gas/scatterSummary.ts';
import { probableSpeed } from '../../engine/gas/speeds.ts';
import { flyChunks } from '../../engine/gas/tally.ts';
import { pointSource, shapeOf } from '../support/plants.ts';
import { benchProblem } from '../engine/gas/gasScenes.ts';

const ROOM = 293.15;
/** Four standard errors: missed once in 16,000 by a true law; the seeds are fixed. */
const ERRORS = 4;

/** Free flights of atoms of one speed in a gas, to their first real collision, m. */
function freeFlights(gas: GasState, speed: number, count: number, seed: number): Float64Array {
  const encounters = encountersOf(gas, DEFAULT_VAPOUR);
  const random = createRandom();
  return Float64Array.from({ length: count }, (_, k) => {
    keyInto(random, seed, 0, k);
    const atom = createAtom();
    atom[DIRECTION] = 1;
    atom[SPEED] = speed;
    let flown = 0;
    do flown += drawFlight(encounters, atom, random);
    while (!attemptCollision(encounters, atom, random));
    return flown;
  });
}

describe('free flights', () => {
  const gas = pureGas('N2', 1, ROOM);
  const [part] = componentsOf(gas);
  const perPath = part!.density * atomCrossSection(part!, DEFAULT_VAPOUR);
  const probable = probableSpeed(ROOM, part!.mass);
  const N = 60_000;

  // λ n σ at speeds s: closed form and Monte Carlo worked out apart from this code, four digits
  test.each([
    [0.5, 0.4098],
    [1, 0.6795],
    [2, 0.889],
    [4, 0.9697],
  ])('of atoms with s = %d are %d/nσ long on average, and as spread as an exponential', (s, path) => {
    const flights = freeFlights(gas, s * probable, N, 41);
    const mean = (flights.reduce((sum, x) => sum + x, 0) / N) * perPath;
    const square = (flights.reduce((sum, x) => sum + x * x, 0) / N) * perPath ** 2;
    expect(Math.abs(mean / path - 1)).toBeLessThan(ERRORS / Math.sqrt(N));
    expect(Math.abs(square / (2 * path ** 2) - 1)).toBeLessThan(ERRORS * Math.sqrt(5 / N)); // (24 − 4)/4 of ⟨x²⟩² over N
  });

  // e^(−r/λ), six digits
  test.each([
    [0.01, 0.99005],
    [0.1, 0.904837],
    [0.5, 0.606531],
    [1, 0.367879],
    [2, 0.135335],
  ])('beyond %d free paths are %d of all', (x, share) => {
    const flights = freeFlights(gas, 2 * probable, N, 42);
    const beyond = flights.filter((flight) => flight * perPath > x * 0.889).length / N;
    expect(Math.abs(beyond - share)).toBeLessThan(ERRORS * Math.sqrt((share * (1 - share)) / N) + 1e-4 * share); // 0.8890 is rounded
  });
});

/**
 * Diffusion coefficient from the mean square displacement of thermal atoms over windows of time T:
 *
 *     ⟨r²⟩ = 6 D (T − t₀),  t₀ = D m/kT: the time that a velocity lasts
 */
function measuredDiffusion(
  gas: GasState,
  windows: number,
  lifetimes: number,
  seed: number,
): { readonly value: number; readonly error: number } {
  const encounters = encountersOf(gas, DEFAULT_VAPOUR);
  const random = createRandom();
  const first = diffusionCoefficient(gas);
  const lasting = (first * ALUMINIUM_MASS) / (BOLTZMANN * gas.temperature);
  const window = lifetimes * lasting;
  const ATOMS = 50;
  let [sum, squares] = [0, 0];
  for (let a = 0; a < ATOMS; a++) {
    keyInto(random, seed, 0, a);
    const atom = createAtom();
    thermalise(encounters, atom, random);
    let left = drawFlight(encounters, atom, random) / atom[SPEED]!;
    for (let w = 0; w < windows / ATOMS; w++) {
      const at = [0, 0, 0];
      let time = window;
      while (time > 0) {
        const step = Math.min(time, left);
        for (let k = 0; k < 3; k++) at[k]! += atom[SPEED]! * step * atom[DIRECTION + k]!;
        time -= step;
        left -= step;
        if (left > 0) continue;
        attemptCollision(encounters, atom, random);
        left = drawFlight(encounters, atom, random) / atom[SPEED]!;
      }
      const r2 = at[0]! ** 2 + at[1]! ** 2 + at[2]! ** 2;
      sum += r2;
      squares += r2 * r2;
    }
  }
  const mean = sum / windows;
  const error = Math.sqrt((squares / windows - mean * mean) / windows);
  const scale = 1 / (6 * (window - lasting));
  return { value: mean * scale, error: error * scale };
}

describe('diffusion', () => {
  /** Exact over second approximation, at most: 1.0190/1.0172 for equal masses (self-diffusion of hard spheres, from memory). */
  const BEYOND_SECOND = 0.002;

  test.each([
    ['N2', 30],
    ['Ar', 30],
    ['He', 30],
  ] as [GasName, number][])('of atoms in %s has the Chapman–Enskog coefficient of hard spheres', (name, lifetimes) => {
    // S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, chapter 14, from memory
    const gas = pureGas(name, 50, 400);
    const { value, error } = measuredDiffusion(gas, 20_000, lifetimes, 51);
    const first = diffusionCoefficient(gas);
    const second = first * secondApproximation(GASES[name].molarMass / AVOGADRO);
    expect(error / first).toBeLessThan(0.007);
    expect(value).toBeGreaterThan(first - ERRORS * error);
    expect(Math.abs(value - second)).toBeLessThan(3 * error + BEYOND_SECOND * first);
  });

  test('limits of the second approximation: a light trace 13/12, equal masses 59/58, a heavy trace 1', () => {
    expect(secondApproximation(1e6 * ALUMINIUM_MASS)).toBeCloseTo(13 / 12, 5);
    expect(secondApproximation(ALUMINIUM_MASS)).toBeCloseTo(59 / 58, 12);
    expect(secondApproximation(1e-6 * ALUMINIUM_MASS)).toBeCloseTo(1, 12);
  });
});

describe('in thick gas', () => {
  /** First zeros of J₀ and J₁ there: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 9.5. */
  const BESSEL = [
    [2.4048255577, 0.5191474973],
    [5.5200781103, -0.3402648065],
    [8.6537279129, 0.2714522999],
    [11.7915344391, -0.2324598314],
    [14.9309177086, 0.2065464331],
    [18.0710639679, -0.187728803],
  ] as const;

  /** Share of what diffuses from a point on the axis that ends on the cap at a distance, in a can that takes up all. */
  const capShare = (distance: number, length: number, radius: number): number =>
    BESSEL.reduce(
      (sum, [zero, j1]) =>
        sum +
        ((2 / (zero * j1)) * Math.sinh((zero * (length - distance)) / radius)) / Math.sinh((zero * length) / radius),
      0,
    );

  test('vapour spreads over a can as the harmonic measure says', async () => {
    // separation of variables: J. D. Jackson, Classical Electrodynamics, 3.7 (potential in a cylinder), from memory
    const [radius, length, height] = [1, 1.6, 0.6];
    const problem = benchProblem({
      // the flat mirror is the lower cap
      shape: shapeOf({ rimRadius: radius, thickness: 0.1 }),
      tank: { radius, centerX: 0, lowZ: -0.2, highZ: length },
      sources: [pointSource({ kind: 'isotropic' }, [0, 0, height])],
      gas: pureGas('N2', 5, ROOM), // free paths of 2 mm
    });
    const tally = await flyChunks(await prepareScatter(problem), 0, 6);
    const { places, collisionsPerAtom, leapsPerAtom } = summarise(problem, tally);
    expect(leapsPerAtom).toBeGreaterThan(5);
    expect(collisionsPerAtom).toBeGreaterThan(500);
    const shareAt = (kind: string): number => places.find((place) => place.kind === kind)!.scattered.value;
    const caps = [capShare(height, length, radius), capShare(length - height, length, radius)];
    // a layer of 0.7 free paths at the walls, where diffusion does not hold: 0.0014 of the radius
    const LAYER = 0.003;
    const error = (share: number): number => 3 * Math.sqrt((share * (1 - share)) / tally.atoms) + LAYER;
    expect(Math.abs(shareAt('mirror') - caps[0]!)).toBeLessThan(error(caps[0]!));
    expect(Math.abs(shareAt('end before the mirror') - caps[1]!)).toBeLessThan(error(caps[1]!));
    expect(Math.abs(shareAt('tank side') - (1 - caps[0]! - caps[1]!))).toBeLessThan(error(0.5));
  });
});
