/** Refractive index of evaporated silicon monoxide, 0.24–3 µm. */
import { tabulated, type Material } from './indexTable.ts';

/**
 * Silicon monoxide evaporated fast in good vacuum; read off a figure, so good to about 0.01 in n and k.
 *
 * Slow evaporation in poor vacuum gives a lower index and less absorption (a film nearer to Si2O3).
 *
 * @see G. Hass, C. D. Salzberg, JOSA 44 (1954) 181, doi 10.1364/JOSA.44.000181; rows from the database
 * polyanskiy/refractiveindex.info-database, data/main/SiO/nk/Hass.yml (CC0 1.0)
 */
const HASS_1954 = tabulated(
  'evaporated silicon monoxide',
  'G. Hass, C. D. Salzberg, JOSA 44 (1954) 181; CC0 database',
  [
    [0.24, 1.847],
    [0.261, 1.933],
    [0.281, 2.051],
    [0.3, 2.161],
    [0.312, 2.216],
    [0.328, 2.246],
    [0.338, 2.255],
    [0.35, 2.259],
    [0.36, 2.255],
    [0.37, 2.237],
    [0.378, 2.213],
    [0.388, 2.18],
    [0.397, 2.158],
    [0.411, 2.125],
    [0.423, 2.096],
    [0.432, 2.078],
    [0.443, 2.059],
    [0.458, 2.041],
    [0.471, 2.023],
    [0.483, 2.01],
    [0.5, 1.999],
    [0.516, 1.99],
    [0.529, 1.985],
    [0.548, 1.979],
    [0.57, 1.974],
    [0.609, 1.963],
    [0.66, 1.949],
    [0.7, 1.942],
    [0.78, 1.933],
    [0.829, 1.926],
    [0.872, 1.919],
    [0.9, 1.916],
    [0.961, 1.912],
    [1, 1.907],
    [2, 1.853],
    [3, 1.822],
  ],
  [
    [0.24, 0.7],
    [0.259, 0.617],
    [0.28, 0.529],
    [0.3, 0.43],
    [0.325, 0.324],
    [0.349, 0.256],
    [0.373, 0.188],
    [0.4, 0.132],
    [0.423, 0.097],
    [0.449, 0.064],
    [0.474, 0.048],
    [0.499, 0.03],
    [0.519, 0.013],
    [0.54, 0.008],
    [0.562, 0.001],
    [0.6, 0.001],
    [1, 0],
    [3, 0],
  ],
);

export const SILICON_MONOXIDE: Material = { name: 'silicon monoxide', tables: [HASS_1954] };
