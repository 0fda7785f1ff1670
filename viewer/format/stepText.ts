/** Stepping a written quantity up and down by its last digit: "0.9 m" becomes "1.0 m". */

const LEADING_NUMBER = /^(\s*)([+-]?\d*(?:[.,]\d*)?)(.*)$/s;

/**
 * The text one step further; unchanged if it does not begin with a number.
 *
 * @param steps how many units of the last written digit, of either sign
 */
export function stepText(text: string, steps: number): string {
  const match = LEADING_NUMBER.exec(text);
  const [, space = '', digits = '', rest = ''] = match ?? [];
  if (!/\d/.test(digits)) return text;
  const mark = digits.includes(',') ? ',' : '.';
  const decimals = digits.includes(mark) ? digits.length - digits.indexOf(mark) - 1 : 0;
  const value = Number(digits.replace(',', '.')) + steps * 10 ** -decimals;
  return `${space}${value.toFixed(decimals).replace('.', mark)}${rest}`;
}
