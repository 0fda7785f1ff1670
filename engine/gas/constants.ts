/** Constants of nature and of aluminium that gas kinetics needs, SI. */

/** J/K, exact. @see SI Brochure, 9th edition (BIPM 2019) */
export const BOLTZMANN = 1.380649e-23;
/** 1/mol, exact. @see SI Brochure, 9th edition (BIPM 2019) */
export const AVOGADRO = 6.02214076e23;
/** kg/mol. @see IUPAC standard atomic weights, 26.98154 (from memory) */
export const ALUMINIUM_MOLAR_MASS = 26.98154e-3;
/** kg */
export const ALUMINIUM_MASS = ALUMINIUM_MOLAR_MASS / AVOGADRO;
