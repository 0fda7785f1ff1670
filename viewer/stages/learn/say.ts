/** Numbers in the sentences of lessons, in the user's units. */
import { inUnit } from '../../../engine/index.ts';
import { lengthDecimals, lengthUnit, thicknessUnit, shownText } from '../../charts/shownUnits.ts';
import { fixed } from '../../format/numbers.ts';
import { scientific } from '../../format/scientific.ts';
import type { Units } from '../../state/units.ts';

export interface Say {
  /** m, of the plant: to about a millimetre */
  readonly length: (metres: number) => string;
  /** m, over many decades: three digits */
  readonly way: (metres: number) => string;
  /** m, of a coat */
  readonly thickness: (metres: number) => string;
  /** Pa */
  readonly pressure: (pascal: number) => string;
  /** m, always in millimetres, as on a drawing */
  readonly millimetres: (metres: number) => string;
  /** m, always in kilometres */
  readonly kilometres: (metres: number) => string;
  /** s, with the unit that fits */
  readonly time: (seconds: number) => string;
  /** 1 */
  readonly percent: (share: number) => string;
  /** a pure number, three digits */
  readonly number: (value: number, digits?: number) => string;
}

/** A number whose digits are worth reading, with three of them. */
const three = (value: number): string => scientific(value, 3);

function timeText(seconds: number): string {
  const [unit, size] =
    seconds >= 3600
      ? (['h', 3600] as const)
      : seconds >= 120
        ? (['min', 60] as const)
        : seconds >= 1
          ? (['s', 1] as const)
          : seconds >= 1e-3
            ? (['ms', 1e-3] as const)
            : (['µs', 1e-6] as const);
  return `${scientific(seconds / size, 2)} ${unit}`;
}

/** Percent with one decimal where that says something. */
function percentText(share: number): string {
  const value = 100 * share;
  const size = Math.abs(value);
  if (size > 0 && size < 0.1) return `${scientific(value, 2)} %`;
  return `${fixed(value, size < 10 ? 1 : 0)} %`;
}

/** A number stays on one line with its unit. */
const unbroken =
  (write: (value: number) => string) =>
  (value: number): string =>
    write(value).replaceAll(' ', '\u00a0');

/** How a user reads numbers. */
export function sayIn(units: Units): Say {
  const length = lengthUnit(units);
  const thickness = thicknessUnit(units);
  const way = (metres: number): string =>
    units.length === 'm' && metres >= 1e4
      ? `${three(metres / 1e3)} km`
      : `${three(metres * length.factor)} ${length.unit}`;
  return {
    length: unbroken((metres) => `${fixed(metres * length.factor, lengthDecimals(length))} ${length.unit}`),
    way: unbroken(way),
    thickness: unbroken((metres) => shownText(metres * 1e9, thickness)),
    pressure: unbroken((pascal) => `${three(inUnit(pascal, 'pressure', units.pressure))} ${units.pressure}`),
    millimetres: unbroken((metres) => `${scientific(metres * 1e3, 2)} mm`),
    kilometres: unbroken((metres) => `${three(metres / 1e3)} km`),
    time: unbroken(timeText),
    percent: unbroken(percentText),
    number: (value, digits = 3) => scientific(value, digits),
  };
}
