/** The light and the film that the stage is to work with, from its view and the design; or why there is none. */
import { BANDS, bandLight, lineLight, spectrumLight, type Light } from '../../../engine/film/light.ts';
import { knownRange, mirrorFilm, type MirrorFilm } from '../../../engine/film/mirrorFilm.ts';
import { readIndexCsv } from '../../../engine/film/materials/indexCsv.ts';
import type { Material } from '../../../engine/film/materials/indexTable.ts';
import { blackBody, readSpectrumCsv } from '../../../engine/film/spectrum.ts';
import type { Plant } from '../../../engine/index.ts';
import { LAYERS, type FilmView, type Layer } from './filmView.ts';

type FilmDesign = Plant['film'];

export type Chosen<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly messages: readonly string[] };

const OWN_TABLE = 'the user’s own table';

/** Names that messages use for the layers. */
const NAMES: Readonly<Record<Layer, string>> = {
  aluminium: 'aluminium by your table',
  oxide: 'oxide by your table',
  overcoat: 'overcoat by your table',
  glass: 'glass by your table',
};

/** The tables of the user's own that can be read, and the faults of those that cannot. */
function ownMaterials(texts: FilmView['indexTexts']) {
  const materials: Partial<Record<Layer, Material>> = {};
  const messages: string[] = [];
  for (const layer of LAYERS) {
    const text = texts[layer] ?? '';
    if (text.trim() === '') continue;
    const read = readIndexCsv(text, NAMES[layer], OWN_TABLE);
    if (read.ok) materials[layer] = read.material;
    else messages.push(...read.messages.map((message) => `Index of the ${layer}: ${message}`));
  }
  return { materials, messages };
}

/** The design's film, with the user's indices where they are given. */
export function chosenFilm(design: FilmDesign, texts: FilmView['indexTexts']): Chosen<MirrorFilm> {
  const { materials, messages } = ownMaterials(texts);
  if (messages.length > 0) return { ok: false, messages };
  const film = mirrorFilm(design);
  return {
    ok: true,
    value: {
      ...film,
      metal: materials.aluminium ?? film.metal,
      oxide: materials.oxide ?? film.oxide,
      overcoat: film.overcoat && (materials.overcoat ?? film.overcoat),
      substrate: materials.glass ?? film.substrate,
    },
  };
}

const inNanometres = (metres: number): string => `${Number((metres * 1e9).toPrecision(4))} nm`;

/** Whether all of a light lies where the film's indices are known; says so if not. */
function withinRange(light: Light, film: MirrorFilm): Chosen<Light> {
  const { low, high, lowMaterial, highMaterial } = knownRange(film);
  const [first, last] = [light.wavelength[0]!, light.wavelength.at(-1)!];
  if (first < low)
    return {
      ok: false,
      messages: [
        `${light.name}: expected light from ${inNanometres(low)}, as far as the index of ${lowMaterial} is known; found ${inNanometres(first)}`,
      ],
    };
  if (last > high)
    return {
      ok: false,
      messages: [
        `${light.name}: expected light up to ${inNanometres(high)}, as far as the index of ${highMaterial} is known; found ${inNanometres(last)}`,
      ],
    };
  return { ok: true, value: light };
}

/** The light chosen on the page, if the film's indices are known for all of it. */
export function chosenLight(
  { light, temperature, spectrumText }: Pick<FilmView, 'light' | 'temperature' | 'spectrumText'>,
  design: FilmDesign,
  film: MirrorFilm,
): Chosen<Light> {
  const { low, high } = knownRange(film);
  switch (light) {
    case 'wavelength':
      return withinRange(lineLight(design.wavelength), film);
    case 'black body':
      return { ok: true, value: spectrumLight(blackBody(temperature), low, high) };
    case 'spectrum': {
      if (spectrumText.trim() === '')
        return { ok: false, messages: ['Spectrum: there is none yet; paste or type one.'] };
      const read = readSpectrumCsv(spectrumText, 'your spectrum');
      if (!read.ok) return { ok: false, messages: read.messages.map((message) => `Spectrum: ${message}`) };
      const [from, to] = read.spectrum.range;
      if (to <= low || from >= high)
        return {
          ok: false,
          messages: [
            `Spectrum: expected light between ${inNanometres(low)} and ${inNanometres(high)}; found ${inNanometres(from)} to ${inNanometres(to)}`,
          ],
        };
      return { ok: true, value: spectrumLight(read.spectrum, low, high) };
    }
    default:
      return withinRange(bandLight(BANDS[light]), film);
  }
}
