import { describe, expect, test } from 'vitest';
import { mirrorFilm } from '../../engine/film/mirrorFilm.ts';
import { presets } from '../../presets/index.ts';
import { chosenFilm, chosenLight } from '../../viewer/stages/film/chosenFilm.ts';
import { FORMS } from '../../viewer/panels/plant/fields/readSchema.ts';
import { startOf } from '../../viewer/panels/plant/fields/starts.ts';
import { plantOf } from '../support/plants.ts';

const { film } = plantOf(presets[0]!.file);
const layers = mirrorFilm(film);
const view = { light: 'wavelength', temperature: 5772, spectrumText: '' } as const;

describe('the light', () => {
  test('is the design’s wavelength unless another is chosen', () => {
    const chosen = chosenLight(view, film, layers);
    expect(chosen.ok && [...chosen.value.wavelength]).toEqual([film.wavelength]);
  });

  test('of a band lies about its published centre', () => {
    const chosen = chosenLight({ ...view, light: 'V' }, film, layers);
    if (!chosen.ok) throw new Error(chosen.messages.join());
    const mean = chosen.value.wavelength.reduce((sum, at, i) => sum + at * chosen.value.weight[i]!, 0);
    expect(mean).toBeCloseTo(545e-9, 9); // M. S. Bessell, ARA&A 43 (2005) 293, from memory
  });

  test('of a hotter body is bluer', () => {
    const meanAt = (temperature: number): number => {
      const chosen = chosenLight({ ...view, light: 'black body', temperature }, film, layers);
      if (!chosen.ok) throw new Error(chosen.messages.join());
      return chosen.value.wavelength.reduce((sum, at, i) => sum + at * chosen.value.weight[i]!, 0);
    };
    expect(meanAt(8000)).toBeLessThan(meanAt(4000));
  });

  test('outside the tables is refused with the limit and what sets it', () => {
    const ceramic = { ...film, substrate: 'glass ceramic', wavelength: 300e-9 } as const;
    const chosen = chosenLight(view, ceramic, mirrorFilm(ceramic));
    expect(!chosen.ok && chosen.messages[0]).toBe(
      '300 nm: expected light from 365 nm, as far as the index of glass ceramic is known; found 300 nm',
    );
  });

  test.each([
    ['', 'there is none yet'],
    ['rubbish', 'Spectrum: '],
    ['wavelength,power\nnm,\n50,1\n60,1', 'expected light between'],
  ])('of a spectrum such as %j is refused in words', (spectrumText, words) => {
    const chosen = chosenLight({ ...view, light: 'spectrum', spectrumText }, film, layers);
    expect(!chosen.ok && chosen.messages.join()).toContain(words);
  });
});

describe('indices of the user’s own', () => {
  test('take the place of the built-in ones', () => {
    const chosen = chosenFilm(film, { aluminium: 'wavelength,n,k\nnm,,\n300,1,5\n900,1,5' });
    expect(chosen.ok && chosen.value.metal.name).toBe('aluminium by your table');
    expect(chosen.ok && chosen.value.oxide.name).toBe(layers.oxide.name);
  });

  test('that cannot be read are refused by layer, row and column', () => {
    const chosen = chosenFilm(film, { oxide: 'wavelength,n\nnm,\n400,1.7\n500,abc' });
    expect(!chosen.ok && chosen.messages[0]).toMatch(/^Index of the oxide: row 4, column n/);
  });

  test('of an overcoat count only where there is one', () => {
    const chosen = chosenFilm(film, { overcoat: 'wavelength,n\nnm,\n300,1.4\n900,1.4' });
    expect(chosen.ok && chosen.value.overcoat).toBeNull();
  });
});

test('every section of the film can be switched on', () => {
  if (FORMS.film.kind !== 'group') throw new Error('the film is a section');
  const sections = FORMS.film.fields.filter(({ kind }) => kind === 'group');
  expect(sections.map(({ key }) => key)).toEqual(['overcoat', 'lastYear']);
  for (const section of sections) {
    const file = { ...presets[0]!.file, film: { ...presets[0]!.file.film, [section.key]: startOf(section) } };
    expect(plantOf(file).film[section.key as 'overcoat']).toBeDefined();
  }
});
