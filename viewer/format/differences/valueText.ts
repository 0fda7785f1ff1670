/** Names and values of a design as words. */
import { formatQuantity, parseQuantity, type DimensionName } from '../../../engine/index.ts';
import { DIMENSIONS } from '../../../engine/design/quantity.ts';
import { isSame } from './isSame.ts';
import { descriptionOf, isRecord, writtenOf, type Spot } from './spot.ts';

/** Keys whose own words, or the words given here, need no explanation beside them. */
const WORDS: Readonly<Record<string, string>> = {
  count: 'number of filaments',
  feeds: 'number of feeds',
  csv: 'CSV table',
  file: 'file name',
  path: 'wire path',
  about: 'angles from',
  aspheric: 'aspheric term',
  from: 'first end',
  to: 'last end',
  halfAngle: 'half angle',
  holeDiameter: 'hole diameter',
  outerDiameter: 'outer diameter',
  innerDiameter: 'inner diameter',
  radiusOfCurvature: 'radius of curvature',
  conicConstant: 'conic constant',
  clearAperture: 'clear aperture',
  clipMass: 'clip mass',
  clipsPerLoop: 'clips per loop',
  startAngle: 'start angle',
  offAxisDistance: 'off-axis distance',
  behindMirror: 'space behind the mirror',
};
const PLAIN = new Set(
  'name story arrangement diameter height axis columns rows spacing center shape size rotation normal radius angle position charge feed loops length wire strands emission law power tilt direction shield angles intensities coefficient outline facing thickness depth pressure gas temperature target tolerance density sticking unit data type sideways removes'.split(
    ' ',
  ),
);
/** Written before a value. */
const SIGNS: Readonly<Record<string, string>> = { tolerance: '±' };
/** Free texts, which need marks around them. */
const QUOTED = new Set(['name', 'story']);

const LONGEST_TEXT = 60;
/** Lists up to this long are shown whole. */
export const WHOLE_LIST = 8;
/** Significant digits of a value in the other's unit. */
const CONVERTED_DIGITS = 4;

const inWords = (key: string): string => key.replace(/(?<=[a-z0-9])(?=[A-Z])/g, ' ').toLowerCase();

/** The name of a key, with the schema's explanation where the words alone would not do. */
export function keyWords(key: string, ...spots: readonly Spot[]): string {
  const known = WORDS[key] ?? (PLAIN.has(key) ? inWords(key) : undefined);
  if (known !== undefined) return known;
  const description = spots.map(descriptionOf).find((text) => text !== undefined);
  const words = key.startsWith('$') ? key : inWords(key);
  return description === undefined ? words : `${words} (${description})`;
}

function textOf(written: unknown): string {
  if (written === undefined) return 'not given';
  if (typeof written === 'boolean') return written ? 'yes' : 'no';
  if (typeof written === 'number') return String(written).replace('-', '\u2212');
  if (typeof written === 'string')
    return written.length > LONGEST_TEXT ? `${written.slice(0, LONGEST_TEXT)}…` : written;
  if (Array.isArray(written))
    return written.length > WHOLE_LIST ? `${written.length} values` : `(${written.map(textOf).join(', ')})`;
  if (isRecord(written))
    return Object.entries(written)
      .map(([key, value]) => `${keyWords(key)} ${textOf(value)}`)
      .join(', ');
  return 'none';
}

/** A value as text: as it is written in the file, or the default. */
export function spotText(spot: Spot): string {
  return textOf(writtenOf(spot));
}

/** What kind of quantity two texts both are, if any, and their units. */
function commonDimension(a: string, b: string): { dimension: DimensionName; value: number; units: string[] } | null {
  for (const dimension of Object.keys(DIMENSIONS) as DimensionName[]) {
    const [first, second] = [parseQuantity(a, dimension), parseQuantity(b, dimension)];
    if (first.ok && second.ok) return { dimension, value: second.value, units: [first.unit, second.unit] };
  }
  return null;
}

/** The second quantity in the first one's unit, in brackets, if they are written in different units. */
function converted(a: Spot, b: Spot): string {
  const [first, second] = [writtenOf(a), writtenOf(b)];
  if (typeof first !== 'string' || typeof second !== 'string') return '';
  const common = commonDimension(first, second);
  if (!common || !isSame(common.value, b.value)) return '';
  const [unit = '', other] = common.units;
  return unit === other ? '' : ` (${formatQuantity(common.value, common.dimension, unit, CONVERTED_DIGITS)})`;
}

/** Where two texts part, from 1. */
function firstDifference(a: string, b: string): number {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  return i + 1;
}

/** "diameter 2.9 m → 2.7 m". */
export function changeText(words: string, key: string, a: Spot, b: Spot): string {
  const sign = SIGNS[key] ?? '';
  const [before, after] = [a, b].map((spot) =>
    QUOTED.has(key) && spot.value !== undefined ? `“${spotText(spot)}”` : spotText(spot),
  );
  if (before !== after) return `${words} ${sign}${before} → ${sign}${after}${converted(a, b)}`;
  const place =
    typeof a.raw === 'string' && typeof b.raw === 'string'
      ? `, from character ${firstDifference(a.raw, b.raw)} on`
      : '';
  return `${words} changed${place}`;
}
