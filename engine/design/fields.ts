/** The kinds of field that a design file is made of; every schema in this folder is composed of these. */
import { closest, distance } from 'fastest-levenshtein';
import { z } from 'zod';
import { DIMENSIONS, parseQuantity, quoteValue, type DimensionName } from './quantity.ts';

// Compiled validators need eval, which a strict Content-Security-Policy forbids.
z.config({ jitless: true });

export interface Limits {
  /** SI, inclusive */
  readonly min?: number;
  /** SI, inclusive */
  readonly max?: number;
  /** SI, exclusive */
  readonly above?: number;
  /** what the limits mean in words, such as "longer than zero" */
  readonly saying: string;
}

export const POSITIVE: Limits = { above: 0, saying: 'greater than zero' };
export const NOT_NEGATIVE: Limits = { min: 0, saying: 'zero or more' };

function isWithin(value: number, { min = -Infinity, max = Infinity, above = -Infinity }: Limits): boolean {
  return value >= min && value <= max && value > above;
}

/** A quantity with its unit; its output is SI. */
export function quantity(dimension: DimensionName, description: string, limits?: Limits) {
  return z
    .string({
      error: ({ input }) => {
        const parsed = parseQuantity(input, dimension);
        return parsed.ok ? undefined : parsed.message;
      },
    })
    .transform((text, context) => {
      const parsed = parseQuantity(text, dimension);
      if (!parsed.ok) {
        context.issues.push({ code: 'custom', message: parsed.message, input: text });
        return z.NEVER;
      }
      if (limits && !isWithin(parsed.value, limits)) {
        const message = `expected ${DIMENSIONS[dimension].noun} ${limits.saying}; found ${quoteValue(text)}`;
        context.issues.push({ code: 'custom', message, input: text });
        return z.NEVER;
      }
      return parsed.value;
    })
    .meta({ description, examples: [DIMENSIONS[dimension].example] });
}

/** A plain number without a unit. */
export function plainNumber(description: string, example: number, limits?: Limits) {
  const error = ({ input }: { input?: unknown }): string =>
    `expected a plain number${limits ? ` ${limits.saying}` : ''}, such as ${example}; found ${quoteValue(input)}`;
  return z
    .number({ error })
    .refine((value) => !limits || isWithin(value, limits), { error })
    .meta({ description, examples: [example] });
}

/** A whole number from min to max. */
export function count(description: string, min: number, max: number) {
  const error = ({ input }: { input?: unknown }): string =>
    `expected a whole number from ${min} to ${max}; found ${quoteValue(input)}`;
  return z.number({ error }).int({ error }).min(min, { error }).max(max, { error }).meta({ description });
}

/** A name of 1 to 80 characters. */
export function label(description: string) {
  const error = ({ input }: { input?: unknown }): string =>
    `expected a name of 1 to 80 characters; found ${quoteValue(input)}`;
  return z
    .string({ error })
    .refine((text) => text.trim() !== '' && text.length <= 80, { error })
    .meta({ description });
}

/** Free text of a few sentences. */
export function prose(description: string) {
  const error = ({ input }: { input?: unknown }): string =>
    `expected text of at most 4000 characters; found ${quoteValue(input)}`;
  return z.string({ error }).max(4000, { error }).meta({ description });
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(description: string, words: T) {
  return z
    .enum(words, {
      error: ({ input }) =>
        `expected one of ${words.map((word) => `"${word}"`).join(', ')}; found ${quoteValue(input)}`,
    })
    .meta({ description });
}

/** Three lengths: a point in the mirror's frame. */
export function point(description: string) {
  const coordinate = quantity('length', 'a coordinate');
  return z
    .tuple([coordinate, coordinate, coordinate], {
      error: ({ input }) => `expected three lengths, such as ["0 m", "0 m", "0.9 m"]; found ${quoteValue(input)}`,
    })
    .meta({ description });
}

/** Three numbers that give a direction; the output has unit length. */
export function direction(description: string) {
  const part = plainNumber('a component', 0);
  return z
    .tuple([part, part, part], {
      error: ({ input }) => `expected a direction of three numbers, such as [0, 0, 1]; found ${quoteValue(input)}`,
    })
    .transform((vector, context): readonly [number, number, number] => {
      const length = Math.hypot(...vector);
      if (!(length > 0) || !Number.isFinite(length)) {
        context.issues.push({
          code: 'custom',
          message: `expected a direction that is not zero; found ${quoteValue(vector)}`,
          input: vector,
        });
        return z.NEVER;
      }
      return [vector[0] / length, vector[1] / length, vector[2] / length];
    })
    .meta({ description });
}

/** "expected a mirror" for anything that is not an object; unknown keys with the nearest known one. */
export function section<Shape extends z.ZodRawShape>(noun: string, shape: Shape) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(key, known)).join('; ');
      return `expected ${noun}; found ${quoteValue(issue.input)}`;
    },
  });
}

function unknownKey(key: string, known: readonly string[]): string {
  const nearest = closest(key, known);
  const hint =
    distance(key, nearest) <= Math.max(2, key.length / 3)
      ? `did you mean "${nearest}"?`
      : `known are ${known.join(', ')}`;
  return `unknown key ${quoteValue(key)}: ${hint}`;
}
