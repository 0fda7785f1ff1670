/** What the model of the vacuum assumes, with formula and source. */

export interface VacuumAssumption {
  readonly statement: string;
  /** empty where words say it all */
  readonly formula: string;
  readonly source: string;
}

const OWN = 'Evenfall’s own definition; no outside source';
const PRACTICE = 'common practice, no source';

/** In the order in which the Vacuum stage shows what rests on them. */
export const VACUUM_ASSUMPTIONS: readonly VacuumAssumption[] = [
  {
    statement:
      'Gas in the tank is mixed evenly and has one temperature. Air, water vapour and all other gases are balanced apart; each is pumped at its own speed.',
    formula: 'V dpᵢ/dt = Qᵢ(t) + Bᵢ − Sᵢ(p) pᵢ',
    source: PRACTICE,
  },
  {
    statement:
      'Volume and inner surface come from the tank’s geometry, less glass and obstacles, unless the design gives them. Surfaces of shields, cell and cables count only if they are listed.',
    formula: '',
    source: OWN,
  },
  {
    statement: 'A tube passes molecules with the probability that Clausing’s integral equation gives, within 1e-4.',
    formula: 'α by Berman’s formula; C = α A v̄/4',
    source: 'P. Clausing, Ann. Phys. 12 (1932) 961; A. S. Berman, J. Appl. Phys. 36 (1965) 3356, from memory',
  },
  {
    statement:
      'Between molecular and viscous flow a tube follows Knudsen’s interpolation; turbulence is left out, for at such pressures the pump and not the pipe sets the speed.',
    formula: 'C = π d⁴ p̄/(128 η L) + C_mol (1 + 2.507 a/λ)/(1 + 3.095 a/λ)',
    source: 'M. Knudsen, Ann. Phys. 28 (1909) 75; constants after S. Dushman, from memory',
  },
  {
    statement:
      'Parts of one line add their resistances beyond the entrance, which counts once; a pump behind a line loses speed as if a wide vessel stood between them. A bend resists like 1.33 diameters of tube for a half turn.',
    formula: '1/C = 1/C_entrance + Σ (1/αᵢ − 1)/(Aᵢ v̄/4); 1/S = 1/S₀ + 1/C',
    source: 'R. Haefer, Vacuum 30 (1980) 217; bend rule of vacuum handbooks; both from memory',
  },
  {
    statement:
      'Pumps follow generic curves by kind unless the design gives their own. At its ultimate pressure a pump brings back what it takes.',
    formula: 'Q = S(p) (p − p_u)',
    source: 'ranges after J. F. O’Hanlon, A User’s Guide to Vacuum Technology, from memory',
  },
  {
    statement:
      'A Roots pump is backed by all rotary pumps together and compresses forty-fold at best. Its motor and its bypass valve are taken to allow the pressure at which it opens.',
    formula: 'S = S_R/(1 + S_R/(K S_B)), K = 40',
    source: 'K. Jousten, Handbook of Vacuum Technology, from memory; K between 10 and 80',
  },
  {
    statement:
      'Valves act once, on the way down. Roughing ends where the first high-vacuum pump opens; both wait for the glow discharge. Fore-vacuum and cooling of high-vacuum pumps are taken to be in order.',
    formula: '',
    source: OWN,
  },
  {
    statement:
      'Clean materials outgas at published rates, through the values at one hour and at ten hours. Real surfaces differ by three to ten times: give your own rates where you have measured them.',
    formula: 'q = q₁ (t/1 h)^−α',
    source: 'R. J. Elsey, Vacuum 25 (1975) 299 and 347, as tabulated by O’Hanlon, from memory, ±20 %',
  },
  {
    statement:
      'Before the first minute vapour leaves with the air. Nine tenths of what metal and glass give off in a day is water, half of what rubber does.',
    formula: 'q · (1 − e^(−t/1 min))^α',
    source: PRACTICE,
  },
  {
    statement:
      'How long the tank stood open, and in which air, scales the water of its hard surfaces against a day in room air; rubber keeps its own. Within a factor of three.',
    formula: 'f = 0.05 + 0.95 w ln(1 + t/6 min)/ln(1 + 24 h/6 min), w = 1 humid, 0.1 dry',
    source:
      'an assumption; amounts from adsorption measured on electropolished steel (25 layers at 32 % humidity), logarithm after M. Li, H. F. Dylla, JVST A 11 (1993) 1702, from memory',
  },
  {
    statement: 'Whatever holds it, the water of some layers cannot raise the pressure above a bound at a given time.',
    formula: 'p < layers · n₀ k T A/(e S t), n₀ = 1e19 m⁻²',
    source: 'after D. Edwards (1976), by its abstract; own derivation',
  },
  {
    statement: 'A leak lets in the same flow of air at all pressures.',
    formula: 'Q constant',
    source: 'common practice; true below half an atmosphere, where a small leak is choked',
  },
  {
    statement: 'A cold trap catches half of the water vapour that strikes it.',
    formula: 'S = ½ A v̄/4',
    source: PRACTICE,
  },
  {
    statement:
      'During the glow discharge gas is let in so that the pressure stays; the pumps go on. That the discharge drives water off the walls is left out, so the time after it is on the safe side.',
    formula: 'Σ dpᵢ/dt = 0',
    source: OWN,
  },
  {
    statement:
      'The dose of a glow discharge counts every charge as one ion spread evenly over the area, and all of the voltage as energy: both are upper bounds.',
    formula: 'ions = I t/(e A), energy = U I t/A',
    source: OWN,
  },
  {
    statement:
      'The dark space at an aluminium cathode follows from pressure alone, as for a normal glow; at kilovolts it is thinner.',
    formula: 'd = 0.25 Torr·cm/p (air), 0.29 Torr·cm/p (argon)',
    source: 'A. von Engel; J. D. Cobine; ±20 %, from memory',
  },
  {
    statement:
      'A leak rises in a straight line, outgassing bends over. Outgassing that settles more slowly than the test lasts is taken for a leak.',
    formula: 'p = p₀ + Q_L t/V + b (1 − e^(−t/τ)), τ from 0.03 to 1 of the test',
    source: 'common practice of vacuum testing; ranges by profile of the least squares',
  },
  {
    statement:
      'Partial pressures are integrated with an implicit method of order 5 and a set error; times of events are exact to that error.',
    formula: 'Radau IIA, 1e-6 a step',
    source: 'E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, IV.8, from memory',
  },
];

/** The usual cautions of pumping a tank down. They advise; local codes and licensed practice decide. */
export const VACUUM_CAUTIONS: readonly string[] = [
  'A tank under vacuum carries ten tonnes on each square metre: a scratched window or a bad weld can implode. Vessels and windows are for those licensed to judge them (ASME VIII-1 UG-28, EN 13445-3 or your local code).',
  'Opened tanks may hold nitrogen or argon instead of air. Measure the oxygen before anyone leans in, and treat the tank as a confined space where your code says so (such as 29 CFR 1910.146).',
  'Vent slowly, with relief against overpressure, and only when filaments, diffusion-pump oil and traps have cooled or warmed as their makers say.',
  'Exhaust of oil-sealed pumps carries mist: lead it outdoors. Hot diffusion-pump oil that meets air burns.',
  'Liquid nitrogen for traps burns skin and displaces air. Warming cryopumps release all that they have taken: keep their relief valves free.',
];
