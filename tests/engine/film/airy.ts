/** Light on layers by summing reflections (Airy), written apart from the engine's matrices. */

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const add = (a: Complex, b: Complex): Complex => complex(a.re + b.re, a.im + b.im);
export const minus = (a: Complex, b: Complex): Complex => complex(a.re - b.re, a.im - b.im);
export const times = (a: Complex, b: Complex): Complex => complex(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re);
export const over = (a: Complex, b: Complex): Complex => {
  const norm = b.re ** 2 + b.im ** 2;
  return complex((a.re * b.re + a.im * b.im) / norm, (a.im * b.re - a.re * b.im) / norm);
};
export const size2 = (a: Complex): number => a.re ** 2 + a.im ** 2;

/** Root with its argument halved, from 0 to π: the wave that fades. */
export function root(a: Complex): Complex {
  const angle = Math.atan2(a.im, a.re);
  const half = (angle < 0 ? angle + 2 * Math.PI : angle) / 2;
  const length = Math.sqrt(Math.hypot(a.re, a.im));
  return complex(length * Math.cos(half), length * Math.sin(half));
}

const exp = (a: Complex): Complex => complex(Math.exp(a.re) * Math.cos(a.im), Math.exp(a.re) * Math.sin(a.im));

/** A medium: index and, for a layer, thickness in m. */
export interface Medium {
  readonly index: Complex;
  readonly thickness?: number;
}

/** Normal part of the wave vector over 2π/λ. */
export const normalPart = (index: Complex, beta: number): Complex =>
  root(minus(times(index, index), complex(beta * beta)));

const weightOf = (index: Complex, q: Complex, polarisation: 's' | 'p'): Complex =>
  polarisation === 's' ? q : over(times(index, index), q);

/**
 * Reflected and transmitted shares of the first medium's light.
 *
 *     r = (r₁₂ + r₂₃ e)/(1 + r₁₂ r₂₃ e), t = t₁₂ t₂₃ √e/(1 + r₁₂ r₂₃ e), e = exp(2i·2πqd/λ)
 *
 * @param media from the light's side; the first and last have no thickness
 * @see M. Born, E. Wolf, Principles of Optics, section 1.6 (from memory)
 */
export function airy(
  media: readonly Medium[],
  wavelength: number,
  angle: number,
  polarisation: 's' | 'p',
): { readonly reflected: number; readonly transmitted: number; readonly r: Complex } {
  const beta = media[0]!.index.re * Math.sin(angle);
  const qs = media.map(({ index }) => normalPart(index, beta));
  const weights = media.map(({ index }, i) => weightOf(index, qs[i]!, polarisation));
  const last = media.length - 1;
  const face = (i: number): { readonly r: Complex; readonly t: Complex } => {
    const sum = add(weights[i]!, weights[i + 1]!);
    return {
      r: over(minus(weights[i]!, weights[i + 1]!), sum),
      t: over(times(complex(2), weights[i]!), sum),
    };
  };
  let { r, t } = face(last - 1);
  for (let i = last - 2; i >= 0; i--) {
    const once = exp(times(complex(0, (2 * Math.PI * media[i + 1]!.thickness!) / wavelength), qs[i + 1]!));
    const twice = times(once, once);
    const first = face(i);
    const below = add(complex(1), times(times(first.r, r), twice));
    t = over(times(times(first.t, t), once), below);
    r = over(add(first.r, times(r, twice)), below);
  }
  return { reflected: size2(r), transmitted: (size2(t) * weights[last]!.re) / weights[0]!.re, r };
}
