/** Numbers of the film as people say them. */

/** A length in nanometres, about three digits. */
export function nanometres(metres: number): string {
  const value = Math.abs(metres) * 1e9;
  return `${(metres * 1e9).toFixed(value >= 99.5 ? 0 : value >= 9.95 ? 1 : 2)} nm`;
}

/** A share in percent with one decimal, or two where it is small. */
export function percent(share: number): string {
  const value = 100 * share;
  return `${value.toFixed(Math.abs(value) < 0.995 ? 2 : 1)} %`;
}

/** A share of a wavelength: "0.021 wave". */
export const waves = (count: number): string => `${count.toPrecision(2)} wave`;

/** A length whose size is not known beforehand, in a unit that suits it. */
export function anyLength(metres: number): string {
  const size = Math.abs(metres);
  const [factor, unit] = size >= 1 ? [1, 'm'] : size >= 1e-3 ? [1e3, 'mm'] : size >= 1e-6 ? [1e6, 'µm'] : [1e9, 'nm'];
  return `${Number((metres * factor).toPrecision(2))} ${unit}`;
}
