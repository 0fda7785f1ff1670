import { describe, expect, test } from 'vitest';
import {
  attemptCollision,
  createAtom,
  DIRECTION,
  drawFlight,
  encountersOf,
  SPEED,
  thermalise,
  type Atom,
  type Encounters,
} from '../../../engine/gas/collisions.ts';
import { ALUMINIUM_MASS, AVOGADRO, BOLTZMANN } from '../../../engine/gas/constants.ts';
import { DEFAULT_VAPOUR } from '../../../engine/gas/freePath.ts';
import { GASES, pureGas, type GasState } from '../../../engine/gas/gases.ts';
import { createRandom, keyInto, type Random } from '../../../engine/gas/random.ts';
import { ROOM } from './gasScenes.ts';

/** Four standard errors: missed once in 16,000 by a true law; the seeds are fixed. */
const ERRORS = 4;
/** Four standard errors of the mean square energy of 4000 atoms, 3.5 % each. */
const SQUARE = 0.14;
const ROUNDING = 1e-14;
/** Thermal motion at 1 µK changes speeds of 1000 m/s by 1e-5. */
const COLD = 1e-4;

function startAtom(speed: number): Atom {
  const atom = createAtom();
  atom[DIRECTION + 2] = 1;
  atom[SPEED] = speed;
  return atom;
}

/** Lets the atom make one real collision. */
function collide(encounters: Encounters, atom: Atom, random: Random): void {
  while (!attemptCollision(encounters, atom, random));
}

const energy = (atom: Atom): number => 0.5 * ALUMINIUM_MASS * atom[SPEED]! ** 2;

test('an attempt that fails leaves the atom as it was; one that succeeds keeps its direction a unit vector', () => {
  const encounters = encountersOf(pureGas('air', 1, ROOM), DEFAULT_VAPOUR);
  const random = createRandom();
  keyInto(random, 1, 0, 0);
  const atom = startAtom(700);
  let failed = 0;
  for (let k = 0; k < 2000; k++) {
    const before = [...atom.subarray(0, 7)];
    if (attemptCollision(encounters, atom, random)) {
      const length = Math.hypot(atom[DIRECTION]!, atom[DIRECTION + 1]!, atom[DIRECTION + 2]!);
      expect(Math.abs(length - 1)).toBeLessThan(ROUNDING);
      expect(atom[SPEED]).not.toBe(before[SPEED]);
    } else {
      failed++;
      expect([...atom.subarray(0, 7)]).toEqual(before);
    }
  }
  expect(failed).toBeGreaterThan(200);
});

test('in a gas that stands still a collision keeps the energy that elastic spheres leave the atom', () => {
  // partners at rest: E′/E is spread evenly between ((M − m)/(M + m))² and 1 (isotropic in the centre-of-mass frame)
  const cold = encountersOf(pureGas('N2', 1, 1e-6), DEFAULT_VAPOUR);
  const gasMass = GASES.N2.molarMass / AVOGADRO;
  const least = ((ALUMINIUM_MASS - gasMass) / (ALUMINIUM_MASS + gasMass)) ** 2;
  const random = createRandom();
  keyInto(random, 2, 0, 0);
  const BINS = 20;
  const counts = new Uint32Array(BINS);
  const N = 40_000;
  for (let k = 0; k < N; k++) {
    const atom = startAtom(1000);
    collide(cold, atom, random);
    const left = (atom[SPEED]! / 1000) ** 2;
    expect(left).toBeGreaterThan(least - COLD);
    expect(left).toBeLessThan(1 + COLD);
    counts[Math.min(BINS - 1, Math.max(0, Math.floor(((left - least) / (1 - least)) * BINS)))]!++;
  }
  const chi2 = counts.reduce((sum, count) => sum + (count - N / BINS) ** 2 / (N / BINS), 0);
  expect(chi2).toBeLessThan(BINS - 1 + ERRORS * Math.sqrt(2 * (BINS - 1)));
});

describe.each(['N2', 'He', 'Ar', 'H2O'] as const)('after many collisions in %s', (name) => {
  test('a hot atom has the energy of the gas, and the spread of a Maxwell distribution', () => {
    const temperature = 350;
    const encounters = encountersOf(pureGas(name, 1, temperature), DEFAULT_VAPOUR);
    const random = createRandom();
    const kT = BOLTZMANN * temperature;
    const SETTLE = name === 'He' ? 120 : 40; // e-folds of the energy: 2 m M/(m + M)² a collision, at least 20 of them
    const N = 4000;
    const sums = [0, 0, 0, 0];
    for (let k = 0; k < N; k++) {
      keyInto(random, 5, 0, k);
      const atom = startAtom(1500);
      for (let i = 0; i < SETTLE; i++) collide(encounters, atom, random);
      // velocities are met in proportion to the time they last, of which fast atoms have less
      let lived = 0;
      do lived += drawFlight(encounters, atom, random) / atom[SPEED]!;
      while (!attemptCollision(encounters, Float64Array.from(atom), random));
      const e = energy(atom) / kT;
      sums[0]! += lived;
      sums[1]! += lived * e;
      sums[2]! += lived * e * e;
      sums[3]! += lived * lived * (e - 1.5) ** 2;
    }
    const mean = sums[1]! / sums[0]!;
    const error = Math.sqrt(sums[3]!) / sums[0]!;
    expect(Math.abs(mean - 1.5)).toBeLessThan(ERRORS * error);
    expect(error).toBeLessThan(0.05);
    expect(Math.abs(sums[2]! / sums[0]! / 3.75 - 1)).toBeLessThan(SQUARE); // ⟨E²⟩ = 15/4 (kT)²
  });
});

test('an atom at the temperature of the gas stays there: its velocity spreads evenly over the directions', () => {
  const gas: GasState = { pressure: 1, temperature: ROOM, mixture: { N2: 0.5, He: 0.3, Ar: 0.2 } };
  const encounters = encountersOf(gas, DEFAULT_VAPOUR);
  const random = createRandom();
  let [along, across, count] = [0, 0, 0];
  for (let k = 0; k < 20_000; k++) {
    keyInto(random, 9, 0, k);
    const atom = createAtom();
    thermalise(encounters, atom, random);
    for (let i = 0; i < 3; i++) collide(encounters, atom, random);
    along += atom[DIRECTION + 2]!;
    across += atom[DIRECTION + 2]! ** 2;
    count++;
  }
  expect(Math.abs(along / count)).toBeLessThan(ERRORS / Math.sqrt(3 * count));
  expect(Math.abs(across / count - 1 / 3)).toBeLessThan(ERRORS * Math.sqrt(4 / 45 / count));
});
