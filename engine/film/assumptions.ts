/** What the model of the film assumes, with formula and source. */

export interface FilmAssumption {
  readonly statement: string;
  /** empty where words say it all */
  readonly formula: string;
  readonly source: string;
}

const OWN = 'Evenfall’s own definition; no outside source';

/** In the order in which the Film stage shows what rests on them. */
export const FILM_ASSUMPTIONS: readonly FilmAssumption[] = [
  {
    statement:
      'Light meets flat, even layers: overcoat, oxide, aluminium, glass. Their reflected and transmitted shares follow from the characteristic matrix; what is left over is absorbed.',
    formula: 'r = (η₀B − C)/(η₀B + C), T = 4 η₀ Re ηₘ/|η₀B + C|², A = 1 − R − T',
    source: 'H. A. Macleod, Thin-Film Optical Filters, chapter 2, from memory',
  },
  {
    statement:
      'Aluminium has the index of an opaque film evaporated in good vacuum at every thickness. Below about 15 nm a real film is islands and reflects less than shown.',
    formula: 'n + ik, linear between the published wavelengths, none outside them',
    source: 'A. D. Rakić, Appl. Opt. 34 (1995) 4755; CC0 refractive-index database',
  },
  {
    statement:
      'The oxide is an even layer of amorphous alumina, clear from 0.30 µm up. In the ultraviolet other film data take over, with a step of about 0.05 % in reflectance at 0.30 µm.',
    formula: '',
    source:
      'R. Boidin et al., Ceram. Int. 42 (2016) 1177; below 0.30 µm S. V. Zhukovsky et al., PRL 115 (2015) 177402, and H.-J. Hagemann et al., JOSA 65 (1975) 742',
  },
  {
    statement:
      'An overcoat is even all over the mirror, and the oxide stays between it and the aluminium unless set to zero.',
    formula: '',
    source: OWN,
  },
  {
    statement:
      'The photometric bands are trapezoids of the published width around the published effective wavelength, all wavelengths weighing alike unless a source is chosen.',
    formula: 'flat over half the width, feet 1.5 widths apart',
    source: 'M. S. Bessell, PASP 91 (1979) 589; ARA&A 43 (2005) 293, from memory, ±2 nm',
  },
  {
    statement:
      'The map of reflectance reads a table of the exact formula, fine enough that halfway between its values the two agree.',
    formula: 'cubic between values; error below 1e-6, stated with the map',
    source: OWN,
  },
  {
    statement:
      'A lamp counts as seen if what comes through the coat is brighter than the least that an eye sees in a lit room, or in the dark. The glass behind the coat is taken as clear.',
    formula: 'T · 120 000 cd/m² against 5 or 0.005 cd/m²',
    source: 'IES Lighting Handbook and CIE 191:2010, both from memory, within a factor of two',
  },
  {
    statement:
      'The oxide grows with the logarithm of time between published stages: 1.5 nm after an hour, 2.25 nm after a day, 3.5 nm after a month, 3.8 nm after two years, each ±0.5 nm or more.',
    formula: 'linear in log t',
    source: 'after G. Hass, from memory; P. B. Barna et al., Thin Solid Films 120 (1984) 249',
  },
  {
    statement:
      'The coat is a figure error: its top is the reflecting surface, so the thickness minus its mean is the surface error, positive toward the light, and the wavefront error is twice that.',
    formula: 'W = 2 (d − d̄)',
    source: 'common practice; holds while the aluminium is opaque',
  },
  {
    statement:
      'Zernike terms are in Noll’s order, made orthonormal over the clear aperture itself, weighted by the area that starlight sees. Each coefficient is the rms its term adds.',
    formula: '(1/A) Σ w F_i F_j = δ_ij, up to radial order 8',
    source: 'R. J. Noll, JOSA 66 (1976) 207; V. N. Mahajan, JOSA 71 (1981) 75',
  },
  {
    statement: 'The peak of a point’s image falls with the rms of the wavefront.',
    formula: 'S = exp(−(2πσ/λ)²)',
    source: 'A. Maréchal (1947) in the form of V. N. Mahajan, JOSA 73 (1983) 860, from memory',
  },
  {
    statement:
      'Columns lean toward the vapour by the tangent rule. Watch places beyond 45° mean arrival; expect a porous, scattering film where the mean is beyond 60° or half of the deposit arrives beyond 60°.',
    formula: 'tan α = 2 tan β',
    source:
      'J. M. Nieuwenhuizen, H. B. Haanstra, Philips Tech. Rev. 27 (1966) 87; limits from G. Hass (1964) and L. Holland (1956), from memory',
  },
  {
    statement:
      'Gas that sticks while the film grows costs visible reflectance by at most a tenth of its arrival ratio, up to a ratio of 0.05; beyond that no loss is given. The tenth is an assumption: no measured table was found.',
    formula: 'loss ≤ 0.1 K',
    source: 'scaled to G. Hass, Physics of Thin Films 2 (1964), from memory',
  },
  {
    statement: 'Roughness takes light out of the image by total integrated scatter.',
    formula: 'TIS = 1 − exp(−(4πσ cos θ/λ)²)',
    source: 'H. E. Bennett, J. O. Porteus, JOSA 51 (1961) 123',
  },
  {
    statement:
      'Light lost is told against an opaque, bare, smooth coat just made and, if measured, against last year’s coat. All mirrors of the path are taken to be coated alike.',
    formula: 'throughput (R/R′)ⁿ, diameter √ of it, exposure 1 over it',
    source: OWN,
  },
];
