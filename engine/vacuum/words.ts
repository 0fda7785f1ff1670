/** Numbers of the vacuum as people say them; the page may put its own units in. */

/** How to say each kind of number, SI. */
export interface VacuumWords {
  readonly pressure: (pascals: number) => string;
  /** Pa·m³/s */
  readonly flow: (pascalCubicMetres: number) => string;
  /** m³/s */
  readonly speed: (cubicMetres: number) => string;
}

/** Two or three digits, powers of ten as in "3.4e-6". */
export function digits(value: number, count = 2): string {
  const size = Math.abs(value);
  if (size === 0) return '0';
  if (size >= 0.01 && size < 10 ** Math.max(count, 4)) return String(Number(value.toPrecision(count)));
  const [mantissa, power] = value.toExponential(count - 1).split('e');
  return `${Number(mantissa)}e${Number(power)}`;
}

/** In mbar and litres. */
export const MBAR_WORDS: VacuumWords = {
  pressure: (value) => `${digits(value / 100)} mbar`,
  flow: (value) => `${digits(10 * value)} mbar l/s`,
  speed: (value) => `${digits(1e3 * value)} l/s`,
};

/** A time in the unit that suits it: "41 s", "12 min", "1 h 50 min", "3 d 4 h". */
export function timeWords(seconds: number): string {
  if (seconds < 100) return `${Number(seconds.toPrecision(2))} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return minutes % 60 === 0 ? `${hours} h` : `${hours} h ${minutes % 60} min`;
  const wholeHours = Math.round(seconds / 3600);
  const days = Math.floor(wholeHours / 24);
  return wholeHours % 24 === 0 ? `${days} d` : `${days} d ${wholeHours % 24} h`;
}

/** A share in whole percent; "under 1 %" where it is small. */
export function shareWords(share: number): string {
  return share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(100 * share)} %`;
}
