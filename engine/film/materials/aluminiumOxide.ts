/** Refractive index of the oxide on aluminium, 0.18–2.6 µm. */
import { tabulated, tabulatedPairs, type Material } from './indexTable.ts';

/**
 * Amorphous alumina film, no absorption measured.
 *
 * Beyond 1 µm every fifth row is kept; linear interpolation then is off by at most 3e-5.
 *
 * @see R. Boidin et al., Ceram. Int. 42 (2016) 1177, doi 10.1016/j.ceramint.2015.09.048; rows from the
 * database polyanskiy/refractiveindex.info-database, data/main/Al2O3/nk/Boidin.yml (CC0 1.0)
 */
const BOIDIN_2016 = tabulated('amorphous alumina film', 'R. Boidin et al., Ceram. Int. 42 (2016) 1177; CC0 database', [
  [0.3, 1.73756],
  [0.32, 1.72717],
  [0.34, 1.71886],
  [0.36, 1.7121],
  [0.38, 1.70652],
  [0.4, 1.70185],
  [0.42, 1.69791],
  [0.44, 1.69454],
  [0.46, 1.69164],
  [0.48, 1.68912],
  [0.5, 1.68691],
  [0.52, 1.68496],
  [0.54, 1.68324],
  [0.56, 1.68169],
  [0.58, 1.68031],
  [0.6, 1.67906],
  [0.62, 1.67792],
  [0.64, 1.67689],
  [0.66, 1.67594],
  [0.68, 1.67507],
  [0.7, 1.67427],
  [0.72, 1.67353],
  [0.74, 1.67283],
  [0.76, 1.67219],
  [0.78, 1.67158],
  [0.8, 1.67101],
  [0.82, 1.67047],
  [0.84, 1.66996],
  [0.86, 1.66948],
  [0.88, 1.66902],
  [0.9, 1.66858],
  [0.92, 1.66816],
  [0.94, 1.66776],
  [0.96, 1.66737],
  [0.98, 1.66699],
  [1, 1.66663],
  [1.1, 1.66496],
  [1.2, 1.66347],
  [1.3, 1.66207],
  [1.4, 1.66072],
  [1.5, 1.65939],
  [1.6, 1.65805],
  [1.7, 1.6567],
  [1.8, 1.65531],
  [1.9, 1.65389],
  [2, 1.65241],
  [2.1, 1.65089],
  [2.2, 1.6493],
  [2.3, 1.64765],
  [2.396, 1.64601],
  [2.4975, 1.6442],
  [2.5976, 1.64235],
]);

/**
 * Alumina in the ultraviolet: two sets of film data that meet within 0.02 near 0.21 µm.
 *
 * At 0.30 µm it lies 0.058 below the film above; under 3 nm of oxide that is a step of 0.05 % in reflectance.
 *
 * @see up to 0.2066 µm: H.-J. Hagemann, W. Gudat, C. Kunz, JOSA 65 (1975) 742; from 0.2110 µm: S. V. Zhukovsky
 * et al., Phys. Rev. Lett. 115 (2015) 177402 (20 nm by atomic layer deposition), every sixth row or so; rows from
 * the same database, data/main/Al2O3/nk/Hagemann.yml and Zhukovsky.yml (CC0 1.0)
 */
const ULTRAVIOLET = tabulatedPairs(
  'alumina film, ultraviolet',
  'H.-J. Hagemann et al., JOSA 65 (1975) 742; S. V. Zhukovsky et al., Phys. Rev. Lett. 115 (2015) 177402; CC0 database',
  [
    [0.1771, 1.924, 8.24e-3],
    [0.2066, 1.774, 2.2e-3],
    [0.211002, 1.785916, 1.309e-3],
    [0.217299, 1.770087, 7.03e-4],
    [0.223596, 1.756776, 3.91e-4],
    [0.229896, 1.745395, 2.25e-4],
    [0.237771, 1.733263, 1.17e-4],
    [0.247225, 1.721062, 5.7e-5],
    [0.256681, 1.710823, 2.9e-5],
    [0.266139, 1.702103, 1.6e-5],
    [0.275601, 1.694586, 9e-6],
    [0.285064, 1.688043, 5e-6],
    [0.29453, 1.6823, 3e-6],
    [0.300842, 1.678848, 2e-6],
  ],
);

export const ALUMINIUM_OXIDE: Material = { name: 'aluminium oxide', tables: [BOIDIN_2016, ULTRAVIOLET] };
