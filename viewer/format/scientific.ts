/** Numbers over many decades: plain where they are short, else with a power of ten. */

const DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const MINUS = '\u2212';
/** Numbers from 10^LEAST to 10^MOST are written out. */
const LEAST = -3;
const MOST = 5;

function superscript(exponent: number): string {
  return String(exponent).replace(/./g, (sign) => (sign === '-' ? '⁻' : (DIGITS[Number(sign)] ?? '')));
}

/**
 * A number with so many significant digits: "0.012", "1.2·10⁻⁵", "10⁻⁵".
 *
 * @param digits ≥ 1; zeros at the end are left out
 */
export function scientific(value: number, digits = 3): string {
  if (value === 0) return '0';
  if (!Number.isFinite(value)) return '–';
  const [mantissa = '', power = '0'] = value.toExponential(digits - 1).split('e');
  const exponent = Number(power);
  if (exponent >= LEAST && exponent < MOST) return String(Number(value.toPrecision(digits))).replace('-', MINUS);
  const factor = String(Number(mantissa)).replace('-', MINUS);
  return factor === '1' ? `10${superscript(exponent)}` : `${factor}·10${superscript(exponent)}`;
}
