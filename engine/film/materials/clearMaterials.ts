/** Refractive indices of clear materials: the glasses of mirrors, and two protective layers. */
import { sellmeier, tabulatedPairs, type Material } from './indexTable.ts';

/**
 * Fused silica at 20 °C, also for an SiO2 layer (an evaporated one is up to 0.03 off).
 *
 * @see I. H. Malitson, JOSA 55 (1965) 1205, valid from 0.21 µm; C. Z. Tan, J. Non-Cryst. Solids 223 (1998) 158
 * confirms it to 6.7 µm
 */
const MALITSON_1965 = sellmeier(
  'fused silica',
  'I. H. Malitson, JOSA 55 (1965) 1205',
  [0.21, 6.7],
  [
    [0.6961663, 0.0684043 ** 2],
    [0.4079426, 0.1162414 ** 2],
    [0.8974794, 9.896161 ** 2],
  ],
);

/**
 * Silica film just below the reach of Malitson's formula; meets it within 0.005 at 0.21 µm.
 *
 * @see L. V. Rodríguez-de Marcos et al., Opt. Mater. Express 6 (2016) 3622 (from memory of the volume); rows from the
 * database polyanskiy/refractiveindex.info-database, data/main/SiO2/nk/Rodriguez-de Marcos.yml (CC0 1.0)
 */
const SILICA_FILM = tabulatedPairs(
  'silica film, ultraviolet',
  'L. V. Rodríguez-de Marcos et al. (2016); CC0 database',
  [
    [0.194557, 1.56207, 6.447e-3],
    [0.196503, 1.559103, 6.357e-3],
    [0.198468, 1.556257, 6.269e-3],
    [0.200452, 1.553522, 6.183e-3],
    [0.202456, 1.55089, 6.099e-3],
    [0.204481, 1.548354, 6.016e-3],
    [0.206525, 1.545909, 5.935e-3],
    [0.20859, 1.54355, 5.856e-3],
    [0.210676, 1.541272, 5.778e-3],
  ],
);

export const SILICA: Material = { name: 'fused silica', tables: [MALITSON_1965, SILICA_FILM] };

/** @see N-BK7 in the database polyanskiy/refractiveindex.info-database, specs/schott/optical (CC0 1.0), maker's catalogue of 2017 */
export const CROWN_GLASS: Material = {
  name: 'borosilicate crown glass',
  tables: [
    sellmeier(
      'borosilicate crown glass',
      "crown glass 517642, maker's catalogue 2017; CC0 database",
      [0.3, 2.5],
      [
        [1.03961212, 0.00600069867],
        [0.231792344, 0.0200179144],
        [1.01046945, 103.560653],
      ],
    ),
  ],
};

/** @see the database polyanskiy/refractiveindex.info-database, specs/schott/misc (CC0 1.0), maker's note of 2007 */
export const GLASS_CERAMIC: Material = {
  name: 'glass ceramic',
  tables: [
    sellmeier(
      'glass ceramic',
      "zero-expansion glass ceramic, maker's note 2007; CC0 database",
      [0.365, 2.325],
      [
        [1.3182408, 0.00879],
        [0.0244, 0.0609],
        [1.08915181, 110],
      ],
    ),
  ],
};

/** Ordinary ray of the crystal; an evaporated layer is a few hundredths lower where it is porous. */
export const MAGNESIUM_FLUORIDE: Material = {
  name: 'magnesium fluoride',
  tables: [
    sellmeier(
      'magnesium fluoride',
      'M. J. Dodge, Appl. Opt. 23 (1984) 1980, ordinary ray; CC0 database',
      [0.2, 7],
      [
        [0.48755108, 0.04338408 ** 2],
        [0.39875031, 0.09461442 ** 2],
        [2.3120353, 23.793604 ** 2],
      ],
    ),
  ],
};
