/** The film: what is wanted of the coat, what lies under and over it, and how it is judged. */
import { choice, count, quantity, section } from './fields.ts';

/** Glasses under the coat whose refractive index is built in. */
export const SUBSTRATES = ['fused silica', 'borosilicate crown glass', 'glass ceramic'] as const;
/** Protective layers over the coat whose refractive index is built in. */
export const OVERCOATS = ['SiO', 'SiO2', 'MgF2'] as const;

const overcoatSchema = section('an overcoat', {
  material: choice('the protective layer over the aluminium', OVERCOATS),
  thickness: quantity('length', 'thickness of the protective layer, the same all over the mirror', {
    above: 0,
    max: 1e-5,
    saying: 'above zero and at most 10 um',
  }),
});

const lastYearSchema = section("last year's mirror", {
  reflectance: quantity('fraction', 'reflectance measured before the old coat was stripped', {
    above: 0,
    max: 1,
    saying: 'above 0 % and at most 100 %',
  }),
});

export const filmSchema = section('a film', {
  target: quantity('length', 'wanted mean thickness', {
    above: 0,
    max: 1e-4,
    saying: 'above zero and at most 0.1 mm',
  }).prefault('100 nm'),
  tolerance: quantity('fraction', 'how far the thickness may be from its mean, either way', {
    above: 0,
    max: 1,
    saying: 'above 0 % and at most 100 %',
  }).prefault('10 %'),
  density: quantity('density', 'density of the film', {
    min: 100,
    max: 30000,
    saying: 'from 100 to 30000 kg/m3',
  }).prefault('2700 kg/m3'),
  sticking: quantity('fraction', 'share of the arriving vapour that stays', {
    above: 0,
    max: 1,
    saying: 'above 0 % and at most 100 %',
  }).prefault('100 %'),
  substrate: choice('the glass under the coat', SUBSTRATES).default('fused silica'),
  oxide: quantity('length', 'thickness of the oxide that air grows on the aluminium', {
    min: 0,
    max: 1e-7,
    saying: 'from zero to 100 nm',
  }).prefault('3 nm'),
  overcoat: overcoatSchema
    .optional()
    .meta({ description: 'a protective layer over the aluminium and its oxide; none unless given' }),
  wavelength: quantity('length', 'wavelength at which the mirror is judged', {
    min: 0.2e-6,
    max: 2.5e-6,
    saying: 'from 0.2 um to 2.5 um',
  }).prefault('550 nm'),
  roughness: quantity('length', 'rms roughness of the coated surface', {
    min: 0,
    max: 1e-7,
    saying: 'from zero to 100 nm',
  }).prefault('1 nm'),
  mirrors: count('reflections on mirrors coated like this one, on the way to the detector', 1, 20).default(1),
  lastYear: lastYearSchema.optional().meta({ description: 'the old coat, to compare this one with' }),
});
