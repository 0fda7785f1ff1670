/** The coat as a figure error, against a published estimate and against the phase of reflected light. */
import { describe, expect, test } from 'vitest';
import { figureOf } from '../../engine/film/figure.ts';
import { filmAt, solveFilmInto } from '../../engine/film/mirrorFilm.ts';
import { createSolution, PHASE_S } from '../../engine/film/stack.ts';
import { filmOf, plantedCoat } from '../engine/film/films.ts';

const HELIUM_NEON = 633e-9;

describe('a 65 nm coat that is 10 % uneven', () => {
  // calypso.org "Coating Uniformity" (1996), aluminium under silicon oxide on a telescope mirror: 650 Å of metal with an
  // error of 10 %, less than 0.005 wave from the overcoat, about 0.025 wave (1/40) from both; 5 % would give 0.0125
  const uneven = (share: number) => plantedCoat((x, y) => 65e-9 * (1 + (share / 2) * (1 - 2 * (x * x + y * y))));
  const peak = (share: number): number =>
    figureOf(uneven(share), { wavelength: HELIUM_NEON }).asCoated.wavefront.peakToValley.value;
  const OVERCOAT = 0.005;

  test('adds 13 nm to the wavefront, 0.0205 wave at 633 nm', () => {
    expect(Math.abs(peak(0.1) - 13e-9)).toBeLessThan(1e-13);
    expect(Math.abs(peak(0.1) / HELIUM_NEON - 0.0205)).toBeLessThan(0.5e-4);
  });

  test('with the overcoat’s share makes the published fortieth of a wave', () => {
    const total = peak(0.1) / HELIUM_NEON + OVERCOAT;
    expect(Math.abs(total - 0.025)).toBeLessThan(0.001);
  });

  test('and half of it with half the unevenness', () => {
    expect(Math.abs(peak(0.05) / HELIUM_NEON + OVERCOAT / 2 - 0.0125)).toBeLessThan(0.0005);
  });

  test('is a bowl that refocusing takes out', () => {
    const { corrected, sentence } = figureOf(uneven(0.1), { wavelength: HELIUM_NEON });
    expect(corrected.wavefront.peakToValley.value).toBeLessThan(1e-15);
    expect(sentence).toContain('13.0 nm peak to valley');
    expect(sentence).toContain('0.021 wave at 633 nm');
  });
});

test('a ±5 % layer of 100 nm is a tenth of 100 nm, doubled: 20 nm of wavefront', () => {
  // arithmetic; targets of 100 nm ±5 % are common practice on observatory pages
  const coat = plantedCoat((x) => 100e-9 * (1 + 0.05 * x));
  const { asCoated } = figureOf(coat, { wavelength: HELIUM_NEON });
  expect(Math.abs(asCoated.wavefront.peakToValley.value - 20e-9)).toBeLessThan(1e-14);
});

describe('light takes the coat’s top for the mirror', () => {
  // characteristic matrix: a coat that is Δ thicker sends the light back 2Δ earlier, plus what its own phase changes
  const out = createSolution();
  const film = filmAt(filmOf(), HELIUM_NEON);
  const phaseAt = (thickness: number): number => solveFilmInto(out, film, thickness, 0)[PHASE_S]!;
  const apparentShift = (from: number, to: number): number => {
    let turn = phaseAt(to) - phaseAt(from);
    turn -= 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    return (turn * HELIUM_NEON) / (4 * Math.PI);
  };

  test('to a hundredth of a nanometre from 60 nm up', () => {
    for (const to of [70e-9, 100e-9, 140e-9]) expect(Math.abs(apparentShift(60e-9, to))).toBeLessThan(0.01e-9);
  });

  test('but not where the coat is so thin that light goes through it', () => {
    expect(Math.abs(apparentShift(5e-9, 60e-9))).toBeGreaterThan(1e-9);
  });
});
