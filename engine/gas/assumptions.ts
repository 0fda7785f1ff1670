/** What the model of the residual gas assumes, with formula and source. */

export interface GasAssumption {
  readonly statement: string;
  /** empty where words say it all */
  readonly formula: string;
  readonly source: string;
}

const OWN = 'Evenfall’s own definition; no outside source';
const COMMON = 'common practice, no source';

/** In the order in which the Vacuum stage shows what rests on them. */
export const GAS_ASSUMPTIONS: readonly GasAssumption[] = [
  {
    statement:
      'The residual gas is at rest, at one temperature and one pressure everywhere, and follows the ideal gas law.',
    formula: 'n = p/kT',
    source: COMMON,
  },
  {
    statement:
      'Molecules are hard spheres whose size follows from the gas’s viscosity at 25 °C. Sources differ by ±6 % in the mean free path.',
    formula: 'λ = kT/(√2 π d² p); mixtures 1/λᵢ = Σ nⱼ π dᵢⱼ² √(1 + mᵢ/mⱼ)',
    source: 'diameters from the CRC Handbook, 100th edition; water from its viscosity',
  },
  {
    statement:
      'An aluminium atom is a hard sphere of 3.27 Å, the middle between twice its metallic and twice its van der Waals radius. No measured cross-section was found: take every free path of the vapour as good to ±25 %.',
    formula: 'σ = π ((d_Al + d_gas)/2)²',
    source: 'radii from memory; bracket of our own',
  },
  {
    statement: 'A fast atom meets fewer molecules on its way than a slow one: its free path depends on its speed.',
    formula: 'λ(v) = v/(n σ v_p [(s + 1/2s) erf s + e^(−s²)/√π]), s = v/v_p, v_p = √(2kT/m_gas)',
    source: 'S. Chapman, T. G. Cowling, The Mathematical Theory of Non-Uniform Gases, 5.4, from memory',
  },
  {
    statement:
      'Vapour leaves at the temperature of the wire, 1500 K unless told otherwise, with the speeds of atoms that cross a surface; speed and direction do not depend on each other.',
    formula: 'f(v) ∝ v³ exp(−m v²/2kT)',
    source: 'Knudsen’s law of effusion; L. Holland, Vacuum Deposition of Thin Films (1956), from memory',
  },
  {
    statement:
      'On straight lines of sight the vapour thins by one exponential. In truth slow atoms are lost first; the difference is zero at the mean throw and elsewhere at most 0.5 % of the vapour in air, argon or water, up to 3 % in helium and hydrogen.',
    formula: 'S(r) = ∫ f(v) e^(−r/λ(v)) dv ≈ e^(−r·perFreePath)',
    source: OWN,
  },
  {
    statement:
      'Scattered atoms are followed one by one: free flights by optical depth, partners from the thermal gas in proportion to the relative speed, isotropic scattering in the centre-of-mass frame.',
    formula: 'v′ = V_cm + m_gas/(m_Al + m_gas) |v − u| n̂',
    source: 'G. A. Bird, Molecular Gas Dynamics and the Direct Simulation of Gas Flows (1994), from memory',
  },
  {
    statement:
      'Far from every surface a wandering atom is set down anywhere on a sphere about it, as diffusion would; it forgets its velocity before it leaps and keeps ten free paths from all surfaces.',
    formula: 'f(x) = mean of f over any sphere about x, for harmonic f',
    source: 'M. E. Muller, Ann. Math. Stat. 27 (1956) 569',
  },
  {
    statement:
      'The vapour neither warms, moves nor uses up the gas, and vapour atoms do not meet each other. In a fast shot the vapour close to a filament can be denser than the gas.',
    formula: '',
    source: COMMON,
  },
  {
    statement:
      'The gas is not thinned where fresh film takes it up, though a fresh film pumps faster than any pump: the pressure given is taken to hold at the mirror.',
    formula: 'S ≤ s A v̄/4',
    source: 'kinetic theory; upper bound',
  },
  {
    statement:
      'An atom sticks where it first touches mirror, wall or obstacle. Filaments catch nothing that comes back: above about 0.1 mbar, where free paths shrink to the size of a coil, less vapour gets away than shown. A shield catches what its filament sends into it and nothing else.',
    formula: '',
    source: COMMON,
  },
  {
    statement:
      'No dust forms. Near 1 mbar aluminium vapour can condense in the gas to smoke, which is black and does not stick: the coat shown there is a bound.',
    formula: '',
    source: 'common knowledge of gas evaporation, no source',
  },
  {
    statement:
      'Scattered vapour is smoothed over rings and sectors of the mirror by low polynomials and harmonics that stand out of the counting noise.',
    formula: 'radial order 8, terms beyond 3 standard errors; the error counts what those left out may hold',
    source: OWN,
  },
  {
    statement:
      'Gas in the film counts by its arrival ratio with all of the water and oxygen sticking and nothing else. Both are the cautious choice.',
    formula: 'K = Σ s Φ_gas/Φ_Al, Φ = p/√(2π m k T)',
    source: 'M. Ohring, Materials Science of Thin Films, from memory; J. Chem. Phys. 87 (1987) 5804 for water',
  },
];
