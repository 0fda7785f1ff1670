/** Optical constants of aluminium, 0.18–2.76 µm. */
import { tabulatedPairs, type Material } from './indexTable.ts';

/**
 * Evaporated aluminium, critically averaged from optical and electron-loss data.
 *
 * Valid for opaque films of good vacuum. Below about 15 nm a film is islands, and no bulk index fits it.
 *
 * @see A. D. Rakić, Appl. Opt. 34 (1995) 4755, doi 10.1364/AO.34.004755; rows from the database
 * polyanskiy/refractiveindex.info-database, data/main/Al/nk/Rakic.yml (CC0 1.0)
 */
const RAKIC_1995 = tabulatedPairs('evaporated aluminium', 'A. D. Rakić, Appl. Opt. 34 (1995) 4755; CC0 database', [
  [0.17712, 0.094236, 1.9519],
  [0.20664, 0.12677, 2.3563],
  [0.24797, 0.18137, 2.9029],
  [0.30996, 0.28003, 3.7081],
  [0.32628, 0.31474, 3.9165],
  [0.36466, 0.39877, 4.3957],
  [0.41328, 0.52135, 5.0008],
  [0.4428, 0.6079, 5.3676],
  [0.47687, 0.7278, 5.7781],
  [0.5166, 0.8734, 6.2418],
  [0.56357, 1.0728, 6.7839],
  [0.61993, 1.366, 7.4052],
  [0.65225, 1.5724, 7.7354],
  [0.68881, 1.8301, 8.0601],
  [0.72932, 2.1606, 8.3565],
  [0.77491, 2.6154, 8.4914],
  [0.79478, 2.7675, 8.3866],
  [0.81569, 2.7668, 8.2573],
  [0.83774, 2.6945, 8.1878],
  [0.88561, 2.2802, 8.1134],
  [0.91166, 1.9739, 8.3058],
  [0.93928, 1.6784, 8.597],
  [0.96863, 1.4867, 9.0655],
  [0.99988, 1.4359, 9.4939],
  [1.0332, 1.3998, 9.8914],
  [1.1271, 1.3281, 10.969],
  [1.2399, 1.3157, 12.245],
  [1.3776, 1.3899, 13.784],
  [1.5498, 1.5782, 15.656],
  [1.7712, 1.9205, 17.991],
  [2.0664, 2.4738, 20.982],
  [2.4797, 3.3372, 25.004],
  [2.7552, 3.938, 27.58],
]);

export const ALUMINIUM: Material = { name: 'aluminium', tables: [RAKIC_1995] };
