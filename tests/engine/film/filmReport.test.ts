/** The whole report of a film, and the words of the design file that steer it. */
import { describe, expect, test } from 'vitest';
import { openPlantFile } from '../../../engine/index.ts';
import { FILM_ASSUMPTIONS } from '../../../engine/film/assumptions.ts';
import { filmProblems, filmReport } from '../../../engine/film/filmReport.ts';
import { BANDS, bandLight } from '../../../engine/film/light.ts';
import { filmOptics, withoutLayers } from '../../../engine/film/mirrorFilm.ts';
import { contaminationQuality } from '../../../engine/film/quality.ts';
import { POROUS } from '../../../engine/film/obliqueFilm.ts';
import { coatOf, plantOf } from '../../support/plants.ts';
import { benchDesign, filmOf, plantedCoat } from './films.ts';

const ROUNDING = 1e-9;
const dome = (x: number, y: number): number => 100e-9 - 60e-9 * (x * x + y * y);

describe('the report', () => {
  const coat = plantedCoat(dome, { film: { oxide: '3 nm', mirrors: 3, lastYear: { reflectance: '85 %' } } });
  const film = filmOf({ oxide: '3 nm' });
  const report = filmReport(coat);

  test('maps the reflectance of every point', () => {
    expect(report.reflectanceMap).toHaveLength(coat.face.points.count);
    for (let i = 0; i < report.reflectanceMap.length; i += 37) {
      const exact = filmOptics(film, coat.thickness[i]!, 550e-9).mean.reflected;
      expect(Math.abs(report.reflectanceMap[i]! - exact)).toBeLessThanOrEqual(report.mapError + ROUNDING);
    }
    expect(report.mapError).toBeLessThan(1e-6);
  });

  test('averages it over the aperture', () => {
    // over a disc, area is even in r²: the mean over t = r² from 0 to 1
    let mean = 0;
    for (let i = 0; i < 2000; i++)
      mean += filmOptics(film, 100e-9 - (60e-9 * (i + 0.5)) / 2000, 550e-9).mean.reflected / 2000;
    expect(Math.abs(report.reflectance.value - mean)).toBeLessThan(1e-6);
    expect(report.reflectance.error).toBeLessThan(1e-4);
  });

  test('takes its spectrum at the thinnest, mean and thickest place, over all that is known', () => {
    const { wavelength, atThinnest, atMean, atThickest, transmitted } = report.spectrum;
    expect(wavelength[0]).toBeCloseTo(0.2e-6, 12);
    expect(wavelength.at(-1)).toBeCloseTo(2.5e-6, 12);
    for (const i of [0, 60, 180]) {
      for (const [row, thickness] of [
        [atThinnest, 40e-9],
        [atMean, 70e-9],
        [atThickest, 100e-9],
      ] as const)
        expect(Math.abs(row[i]! - filmOptics(film, thickness, wavelength[i]!).mean.reflected)).toBeLessThan(1e-8);
      const { transmitted: exact } = filmOptics(film, 40e-9, wavelength[i]!).mean;
      expect(Math.abs(transmitted[i]! / exact - 1)).toBeLessThan(1e-6);
    }
  });

  test('draws reflectance against thickness from bare glass on, with the mirror’s range', () => {
    const { thickness, reflected, transmitted, mirror } = report.curve;
    expect(thickness[0]).toBe(0);
    expect(reflected[0]! + transmitted[0]!).toBeCloseTo(1, 9);
    expect(thickness.at(-1)).toBeGreaterThan(mirror.high);
    expect(mirror.low).toBeCloseTo(40e-9, 12);
    expect(mirror.mean).toBeCloseTo(70e-9, 12);
    expect(mirror.high).toBeCloseTo(100e-9, 12);
    for (let i = 0; i < thickness.length; i++) expect(reflected[i]! + transmitted[i]!).toBeLessThan(1 + ROUNDING);
  });

  test('says through which place a lamp is seen', () => {
    expect(report.thinnest.transmitted).toBeGreaterThan(report.mean.transmitted);
    expect(report.mean.transmitted).toBeGreaterThan(report.thickest.transmitted);
    const [lamp] = report.opaque;
    expect(lamp?.isMet).toBe(false);
    expect(lamp!.thickness).toBeGreaterThan(40e-9);
    expect(lamp!.thickness).toBeLessThan(100e-9);
    expect(report.sentence).toContain('a lamp shows through it');
    expect(filmReport(plantedCoat(() => 100e-9)).opaque[0]?.isMet).toBe(true);
  });

  test('takes scatter off, compares with a perfect coat and with last year’s', () => {
    const { lightLost } = report;
    const perfect = filmOptics(withoutLayers(film), 1e-6, 550e-9).mean.reflected;
    expect(Math.abs(lightLost.perfect - perfect)).toBeLessThan(ROUNDING);
    const scatter = 1 - Math.exp(-(((4 * Math.PI) / 550) ** 2));
    expect(Math.abs(lightLost.reflectance.value / (report.reflectance.value * (1 - scatter)) - 1)).toBeLessThan(
      ROUNDING,
    );
    expect(lightLost.mirrors).toBe(3);
    expect(lightLost.againstLastYear?.throughput.value).toBeCloseTo((lightLost.reflectance.value / 0.85) ** 3, 9);
  });

  test('ages the film: the oxide grows and the reflectance falls', () => {
    const { ageing } = report;
    expect(ageing.length).toBeGreaterThan(3);
    for (let i = 1; i < ageing.length; i++) {
      expect(ageing[i]!.time).toBeGreaterThan(ageing[i - 1]!.time);
      expect(ageing[i]!.oxide.value).toBeGreaterThanOrEqual(ageing[i - 1]!.oxide.value);
      expect(ageing[i]!.reflected).toBeLessThanOrEqual(ageing[i - 1]!.reflected);
    }
  });

  test('follows a band, an angle, an overcoat and another film', () => {
    const inBand = filmReport(coat, { light: bandLight(BANDS.I) });
    expect(inBand.light).toBe('I band');
    expect(inBand.reflectance.value).toBeLessThan(report.reflectance.value - 0.02);
    const slanted = filmReport(coat, { angle: 1 });
    expect(slanted.reflectance.value).not.toBe(report.reflectance.value);
    expect(slanted.quality.scatter).toBeLessThan(report.quality.scatter);
    const covered = plantedCoat(dome, { film: { overcoat: { material: 'SiO', thickness: '140 nm' } } });
    expect(filmReport(covered).reflectance.value).toBeLessThan(report.reflectance.value - 0.001);
    expect(filmReport(covered).spectrum.known.lowMaterial).toBe('silicon monoxide');
    const bare = filmReport(coat, { film: withoutLayers(film) });
    expect(bare.reflectance.value).toBeGreaterThan(report.reflectance.value);
  });

  test('is the same each time', () => {
    expect(filmReport(coat)).toEqual(report);
  });

  test('of a bare mirror speaks of glass', () => {
    const bare = filmReport(plantedCoat(() => 0));
    expect(bare.reflectance.value).toBeLessThan(0.05);
    expect(bare.sentence).toContain('bare glass');
    expect(JSON.stringify(bare.lightLost)).not.toContain('null,"perf');
    for (const value of bare.reflectanceMap) expect(Number.isFinite(value)).toBe(true);
  });

  test('of light that no table reaches is refused with the table’s range', () => {
    const ceramic = plantedCoat(dome, { film: { substrate: 'glass ceramic', wavelength: '300 nm' } });
    expect(() => filmReport(ceramic)).toThrow(
      'the index of glass ceramic is known from 0.365 to 2.325 um; asked for 0.3 um',
    );
    expect(() => filmReport(coat, { angle: Math.PI / 2 })).toThrow('expected an angle of incidence');
  });
});

describe('the quality', () => {
  test('weighs arrival angles by area and deposit, and finds the worst place', () => {
    const coat = plantedCoat(() => 100e-9, {
      arrival: (x, y) => ({ meanAngle: 0.3 + 0.9 * (x * x + y * y), grazingShare: 0.4 * (x * x + y * y) }),
    });
    const arrival = filmReport(coat).quality.arrival!;
    // means over the unit disc of r² is 1/2
    expect(arrival.meanAngle).toBeCloseTo(0.75, 8);
    expect(arrival.grazingShare).toBeCloseTo(0.2, 8);
    expect(arrival.worstAngle).toBeCloseTo(1.2, 12);
    expect(Math.hypot(arrival.worstPosition[0], arrival.worstPosition[1])).toBeCloseTo(1, 9);
    expect(Math.tan(arrival.worstTilt) * 2).toBeCloseTo(Math.tan(1.2), 9);
    // 60° is reached where 0.3 + 0.9 r² = π/3; the nodes tell the area to a few percent
    expect(Math.abs(arrival.porousShare - (1 - (Math.PI / 3 - 0.3) / 0.9))).toBeLessThan(0.03);
    expect(arrival.grade).toContain(POROUS);
    expect(filmReport(coat).quality.sentence).toContain('expect a porous, scattering film on');
  });

  test('leaves out places where nothing arrives', () => {
    const coat = plantedCoat((x) => (x > 0 ? 100e-9 : 0), {
      arrival: (x) => (x > 0 ? { meanAngle: 0.5, grazingShare: 0.1 } : { meanAngle: NaN, grazingShare: NaN }),
    });
    const arrival = filmReport(coat).quality.arrival!;
    expect(arrival.meanAngle).toBeCloseTo(0.5, 9);
    expect(arrival.grazingShare).toBeCloseTo(0.1, 9);
  });

  test('reads the arrival angles of a real coat: a point source 1 m above a flat mirror', async () => {
    const coat = await coatOf(plantOf(benchDesign()), { points: 4000, rays: 0, withArrival: true });
    const arrival = filmReport(coat).quality.arrival!;
    expect(arrival.worstAngle).toBeCloseTo(Math.PI / 4, 9);
    // ∫ atan(r) 2r dr from 0 to 1 = [r² atan r − r + atan r] = π/2 − 1
    expect(arrival.meanAngle).toBeCloseTo(Math.PI / 2 - 1, 7);
    expect(arrival.grazingShare).toBe(0);
    expect(filmReport({ ...coat, arrival: null }).quality.arrival).toBeNull();
  });

  test.each([
    [0, 'clean', 0],
    [0.01, 'clean', 0.001],
    [0.03, 'slight', 0.003],
    [0.05, 'slight', 0.005],
    [0.2, 'doubtful', null],
  ])('with an arrival ratio of %d is %s', (arrivalRatio, grade, loss) => {
    const quality = contaminationQuality({ arrivalRatio });
    expect(quality.grade).toBe(grade);
    if (loss === null) expect(quality.visibleLoss).toBeNull();
    else expect(quality.visibleLoss).toBeCloseTo(loss, 12);
  });

  test('mentions the vacuum only when it was asked', () => {
    const coat = plantedCoat(dome);
    expect(filmReport(coat).quality.contamination).toBeNull();
    const poor = filmReport(coat, { contamination: { arrivalRatio: 0.3 } }).quality;
    expect(poor.sentence).toContain('its reflectance is in doubt');
  });
});

describe('the film section of a design', () => {
  const problems = (film: Record<string, unknown>): string[] => {
    const opened = openPlantFile({
      format: 'evenfall',
      version: 1,
      name: 'Tarn Hill test bench',
      ...benchDesign(film),
    });
    return opened.ok ? [] : opened.problems.map(({ path, message }) => `${path}: ${message}`);
  };

  test('fills in what an old file leaves out', () => {
    const { film } = plantOf(benchDesign({ target: '90 nm' }));
    expect(film.target).toBeCloseTo(90e-9, 15);
    expect(film.substrate).toBe('fused silica');
    expect(film.oxide).toBeCloseTo(3e-9, 15);
    expect(film.wavelength).toBeCloseTo(550e-9, 15);
    expect(film.roughness).toBeCloseTo(1e-9, 15);
    expect(film.mirrors).toBe(1);
    expect(film.overcoat).toBeUndefined();
    expect(film.lastYear).toBeUndefined();
  });

  test('takes all of its keys', () => {
    const { film } = plantOf(
      benchDesign({
        substrate: 'glass ceramic',
        oxide: '0 nm',
        overcoat: { material: 'MgF2', thickness: '25 nm' },
        wavelength: '0.633 um',
        mirrors: 3,
        lastYear: { reflectance: '88 %' },
        roughness: '12 angstrom',
      }),
    );
    expect(film.oxide).toBe(0);
    expect(film.overcoat?.thickness).toBeCloseTo(25e-9, 15);
    expect(film.lastYear?.reflectance).toBeCloseTo(0.88, 12);
    expect(film.roughness).toBeCloseTo(1.2e-9, 15);
  });

  test.each([
    [
      { substrate: 'steel' },
      'film.substrate: expected one of "fused silica", "borosilicate crown glass", "glass ceramic"; found "steel"',
    ],
    [{ oxide: '-1 nm' }, 'film.oxide: expected a length from zero to 100 nm; found "-1 nm"'],
    [{ oxide: 3 }, 'film.oxide: expected a length with its unit'],
    [{ overcoat: { material: 'SiO' } }, 'film.overcoat.thickness: expected a length with its unit'],
    [
      { overcoat: { material: 'gold', thickness: '9 nm' } },
      'film.overcoat.material: expected one of "SiO", "SiO2", "MgF2"; found "gold"',
    ],
    [
      { overcoat: { material: 'SiO', thickness: '0 nm' } },
      'film.overcoat.thickness: expected a length above zero and at most 10 um',
    ],
    [{ overcoat: { material: 'SiO', thickness: '9 nm', colour: 1 } }, 'film.overcoat: unknown key "colour"'],
    [{ wavelength: '100 nm' }, 'film.wavelength: expected a length from 0.2 um to 2.5 um; found "100 nm"'],
    [{ mirrors: 0 }, 'film.mirrors: expected a whole number from 1 to 20; found 0'],
    [{ lastYear: { reflectance: '120 %' } }, 'film.lastYear.reflectance: expected a share above 0 % and at most 100 %'],
    [{ lastYear: {} }, 'film.lastYear.reflectance: expected a share with its unit'],
    [{ roughness: '1 kg' }, 'film.roughness: expected a length with its unit'],
    [{ subtrate: 'fused silica' }, 'film: unknown key "subtrate": did you mean "substrate"?'],
  ])('with %j is refused', (film, message) => {
    expect(problems(film)).toContainEqual(expect.stringContaining(message));
  });

  test('knows which wavelength its glass cannot answer', () => {
    const filmWith = (film: Record<string, unknown>) => plantOf(benchDesign(film)).film;
    expect(filmProblems(filmWith({}))).toEqual([]);
    expect(filmProblems(filmWith({ substrate: 'glass ceramic', wavelength: '300 nm' }))).toEqual([
      {
        path: 'film.wavelength',
        message: 'expected a wavelength from 365 nm, as far as the index of glass ceramic is known; found 300 nm',
      },
    ]);
    expect(filmProblems(filmWith({ substrate: 'glass ceramic', wavelength: '2.4 um' }))[0]?.message).toContain(
      'up to 2325 nm',
    );
    expect(
      filmProblems(filmWith({ overcoat: { material: 'SiO', thickness: '9 nm' }, wavelength: '210 nm' }))[0]?.message,
    ).toContain('silicon monoxide');
  });
});

test('every assumption has a statement and a source', () => {
  expect(FILM_ASSUMPTIONS.length).toBeGreaterThan(10);
  for (const { statement, source } of FILM_ASSUMPTIONS) {
    expect(statement).toMatch(/\.$/);
    expect(source.length).toBeGreaterThan(10);
  }
});
