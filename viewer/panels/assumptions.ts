/** What the model assumes, with formula and source. */

export interface Assumption {
  readonly name: string;
  readonly formula?: string;
  readonly text: string;
  readonly source: string;
}

const HOLLAND = 'L. Holland, Vacuum Deposition of Thin Films (1956), from memory';
const HOLLAND_STECKELMACHER = 'L. Holland, W. Steckelmacher, Vacuum 2 (1952) 346–364';
const OWN = 'Evenfall’s own definition; no outside source';

/** Emission laws by their name in the design file. */
export const EMISSION_LAWS: readonly Assumption[] = [
  {
    name: 'isotropic',
    formula: 'I = 1 / 4π',
    text: 'A small source that emits alike in all directions.',
    source: HOLLAND_STECKELMACHER,
  },
  {
    name: 'cosine power',
    formula: 'I = (n + 1) / 2π · max(0, cos φ)ⁿ',
    text: 'A crucible, a boat or a shielded filament; n = 1 is Knudsen’s law.',
    source: HOLLAND,
  },
  {
    name: 'straight wire',
    formula: 'I = sin θ / π²',
    text: 'A long wire, or a close-wound coil along its axis: Lambert’s law on a cylinder.',
    source: HOLLAND,
  },
  {
    name: 'open coil',
    formula: 'I = (2 / π³) · E(sin² θ)',
    text: 'A coil whose turns stand well apart: Lambert’s law on the wire, averaged over the turns. E is the complete elliptic integral of the second kind, parameter m.',
    source:
      'derived from Lambert’s law; E as in Abramowitz & Stegun, Handbook of Mathematical Functions (1964), chapter 17',
  },
  {
    name: 'table',
    formula: 'I = measured, scaled to ∫ I dΩ = 1',
    text: 'Intensity against angle as measured, linear between the angles.',
    source: 'the user’s own measurement',
  },
];

export const TRANSPORT: readonly Assumption[] = [
  {
    name: 'Straight flight',
    formula: 'μ = Σ m · I(u) · max(0, −u·n) / r² · V',
    text: 'Vapour flies in straight lines from each loop to the mirror; V is 1 where the line of sight is clear and 0 behind an obstacle. Mass m per filament, direction u, surface normal n, distance r.',
    source: `${HOLLAND}; ${HOLLAND_STECKELMACHER}`,
  },
  {
    name: 'No gas on the Layout stage',
    text: 'The residual gas turns no vapour aside here: the coat is that of a perfect vacuum. The Vacuum stage follows the vapour through the gas.',
    source: OWN,
  },
  {
    name: 'Sticking',
    formula: 'sticking coefficient 1 unless the design says otherwise',
    text: 'What arrives stays where it lands: nothing rebounds onto the mirror from walls or obstacles.',
    source: 'common practice, no source',
  },
  {
    name: 'Thickness',
    formula: 'd = μ · sticking / ρ',
    text: 'Film density ρ is 2700 kg/m³, bulk aluminium, unless the design says otherwise. A porous film is thicker for the same mass.',
    source: 'CRC Handbook of Chemistry and Physics, 2.70 g/cm³, from memory',
  },
  {
    name: 'All of the charge evaporates',
    text: 'Each filament in use gives off its whole charge, spread over its loops as its clips are; a filament out of use gives off nothing.',
    source: OWN,
  },
];

export const NUMERICS: readonly Assumption[] = [
  {
    name: 'Error of the statistics',
    text: 'Each number is computed again from every second point; the difference, with a share for cells that a shadow edge crosses, is its error. It says how well the equations are solved, not how well they fit the plant.',
    source: 'embedded quadrature rules: Gauss–Lobatto with Simpson',
  },
  {
    name: 'Error of the mass budget',
    text: 'Shares of walls, obstacles and the glass’s edge come from rays with a fixed seed; their error is four standard errors over sixteen replicates.',
    source: 'common practice, no source',
  },
];

/** The usual cautions of the work that the page is about. */
export const CAUTIONS: readonly string[] = [
  'A vacuum vessel stores energy: a window or a port can implode. Keep guards on and never work on a vessel under vacuum.',
  'Feeds carry kiloamperes. Lock out and earth the supplies before touching filaments, bars or feedthroughs.',
  'Glow-discharge supplies carry kilovolts, also inside the tank. Interlock the doors.',
  'Filaments, shields and charges stay hot long after firing, and glow bright enough to hurt the eye through a window.',
  'An opened tank may hold nitrogen instead of air. Check the oxygen before anyone leans in.',
];
