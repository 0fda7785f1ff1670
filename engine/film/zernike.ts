/** Zernike polynomials on the unit circle, in Noll's order and norm. */

/** One polynomial: radial order n, azimuthal order m ≥ 0, and whether it goes as sin mφ. */
export interface ZernikeTerm {
  /** Noll's index, from 1 */
  readonly noll: number;
  readonly n: number;
  readonly m: number;
  readonly isSine: boolean;
  readonly name: string;
}

export const PISTON = 1;
export const TILT = [2, 3] as const;
export const DEFOCUS = 4;

/** Number of polynomials up to a radial order. */
export const termCount = (order: number): number => ((order + 1) * (order + 2)) / 2;

const FAMILIES = ['', 'coma', 'astigmatism', 'trefoil', 'tetrafoil', 'pentafoil', 'hexafoil', 'heptafoil', 'octafoil'];
const PREFIXES = ['primary', 'secondary', 'tertiary', 'quaternary'];

function nameOf(n: number, m: number, isSine: boolean): string {
  if (n === 0) return 'piston';
  if (n === 1) return `tilt along ${isSine ? 'y' : 'x'}`;
  if (n === 2 && m === 0) return 'defocus';
  const rank = m === 0 ? n / 2 - 2 : (n - Math.max(m, m === 1 ? 3 : m)) / 2;
  const family = m === 0 ? 'spherical aberration' : (FAMILIES[m] ?? `${m}-fold`);
  const phase = m === 0 ? '' : isSine ? ', sine' : ', cosine';
  return `${PREFIXES[rank] ?? `${rank + 1}th`} ${family}${phase}`;
}

/**
 * The polynomials up to a radial order in Noll's sequence: n rises, within it m; even indices go as
 * cos mφ, odd ones as sin mφ.
 *
 * @see R. J. Noll, JOSA 66 (1976) 207
 */
export function zernikeTerms(order: number): readonly ZernikeTerm[] {
  const terms: ZernikeTerm[] = [];
  for (let n = 0; n <= order; n++) {
    for (let m = n % 2; m <= n; m += 2) {
      for (let twin = 0; twin < (m === 0 ? 1 : 2); twin++) {
        const noll = terms.length + 1;
        const isSine = m > 0 && noll % 2 === 1;
        terms.push({ noll, n, m, isSine, name: nameOf(n, m, isSine) });
      }
    }
  }
  return terms;
}

/** A set of polynomials ready for evaluation; cosine and sine of the same n and m share their radial part. */
export interface ZernikeSet {
  readonly order: number;
  readonly terms: readonly ZernikeTerm[];
  /** [radial parts] m of each */
  readonly azimuthal: Int32Array;
  /** [radial parts] index of the term that goes as cos mφ, and of its twin that goes as sin mφ, or −1 */
  readonly cosine: Int32Array;
  readonly sine: Int32Array;
  /** [radial parts] coefficients with their norm, lowest power of ρ² first */
  readonly radial: readonly Float64Array[];
  /** scratch: ρ^m cos mφ and ρ^m sin mφ for each m */
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
}

function factorial(n: number): number {
  let product = 1;
  for (let i = 2; i <= n; i++) product *= i;
  return product;
}

/** Coefficients of R_n^m / ρ^m in powers of ρ², times √(n+1), and √2 for m > 0. */
function radialCoefficients({ n, m }: ZernikeTerm): Float64Array {
  const norm = Math.sqrt((n + 1) * (m > 0 ? 2 : 1));
  const count = (n - m) / 2;
  const coefficients = new Float64Array(count + 1);
  for (let s = 0; s <= count; s++) {
    const size = factorial(n - s) / (factorial(s) * factorial((n + m) / 2 - s) * factorial(count - s));
    coefficients[count - s] = norm * (s % 2 === 0 ? size : -size);
  }
  return coefficients;
}

/** Prepares all polynomials up to a radial order. */
export function zernikeSet(order: number): ZernikeSet {
  const terms = zernikeTerms(order);
  const parts = terms.filter(({ isSine }) => !isSine);
  const twin = (part: ZernikeTerm): number =>
    terms.findIndex(({ n, m, isSine }) => isSine && n === part.n && m === part.m);
  return {
    order,
    terms,
    azimuthal: Int32Array.from(parts, ({ m }) => m),
    cosine: Int32Array.from(parts, ({ noll }) => noll - 1),
    sine: Int32Array.from(parts, twin),
    radial: parts.map(radialCoefficients),
    cosines: new Float64Array(order + 1),
    sines: new Float64Array(order + 1),
  };
}

/**
 * All polynomials of a set at a point, with ∫ Z² over the unit circle = π.
 *
 *     Z = √(n+1) R_n^m(ρ) · {1, √2 cos mφ, √2 sin mφ}
 *
 * @param out [terms] overwritten
 * @param x [1] ρ cos φ
 * @param y [1] ρ sin φ
 * @returns out
 * @see R. J. Noll, JOSA 66 (1976) 207, eqs. (1)–(2)
 */
export function zernikeInto(out: Float64Array, set: ZernikeSet, x: number, y: number): Float64Array {
  const { azimuthal, cosine, sine, radial, cosines, sines } = set;
  // (x + iy)^m = ρ^m (cos mφ + i sin mφ)
  cosines[0] = 1;
  for (let m = 1; m < cosines.length; m++) {
    cosines[m] = cosines[m - 1]! * x - sines[m - 1]! * y;
    sines[m] = cosines[m - 1]! * y + sines[m - 1]! * x;
  }
  const square = x * x + y * y;
  for (let part = 0; part < radial.length; part++) {
    const coefficients = radial[part]!;
    const m = azimuthal[part]!;
    let value = coefficients[coefficients.length - 1]!;
    for (let i = coefficients.length - 2; i >= 0; i--) value = value * square + coefficients[i]!;
    out[cosine[part]!] = value * cosines[m]!;
    if (sine[part]! >= 0) out[sine[part]!] = value * sines[m]!;
  }
  return out;
}
