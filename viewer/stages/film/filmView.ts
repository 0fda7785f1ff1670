/** How the Film stage looks at a coat: the light, the angle, the indices. Kept by the browser; none of it is the design's. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';
import type { BandName } from '../../../engine/film/light.ts';
import type { Removable } from '../../../engine/film/figure.ts';

/** The design's wavelength, a photometric band, a black body, or a spectrum of the user's own. */
export type LightKind = 'wavelength' | BandName | 'black body' | 'spectrum';

/** Layers whose index the user may replace by a table. */
export const LAYERS = ['aluminium', 'oxide', 'overcoat', 'glass'] as const;
export type Layer = (typeof LAYERS)[number];

export interface FilmView {
  readonly light: LightKind;
  /** of the black body, K */
  readonly temperature: number;
  /** CSV of the user's own source */
  readonly spectrumText: string;
  /** of incidence, rad */
  readonly angle: number;
  /** what the telescope takes out of the figure */
  readonly remove: readonly Removable[];
  /** CSV of indices in place of the built-in ones; a layer without one keeps the built-in */
  readonly indexTexts: Readonly<Partial<Record<Layer, string>>>;
}

const START: FilmView = {
  light: 'wavelength',
  temperature: 5772,
  spectrumText: '',
  angle: 0,
  remove: ['tilt', 'defocus'],
  indexTexts: {},
};

export const useFilmView = create<FilmView>()(persist(() => START, { name: 'evenfall-film' }));
