/** The kinds of field that a design file is made of; every schema in this folder is composed of these. */
import { closest, distance } from 'fastest-levenshtein';
import { z } from 'zod';
import { MAX_PROBLEMS } from './problem.ts';
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
export const NOT_NEGATIVE: Limits = { min: 0, saying: 'of zero or more' };

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

/** Text of at most so many characters. */
export function content(noun: string, max: number, description: string) {
  const error = ({ input }: { input?: unknown }): string =>
    typeof input === 'string'
      ? `expected ${noun} of at most ${max} characters; found ${input.length} characters`
      : `expected ${noun}; found ${quoteValue(input)}`;
  return z.string({ error }).max(max, { error }).meta({ description });
}

/** A list of min to max items. */
export function list<Item extends z.ZodType>(noun: string, item: Item, min: number, max: number) {
  const range = min > 0 ? `${min} to ${max}` : `at most ${max}`;
  const error = ({ input, code }: { input?: unknown; code?: string }): string =>
    Array.isArray(input) && code !== 'invalid_type'
      ? `expected a list of ${range} ${noun}; found ${input.length}`
      : `expected a list of ${noun}; found ${quoteValue(input)}`;
  return z.array(item, { error }).min(min).max(max);
}

/** A direction by name or as three numbers. */
export function namedDirection<const T extends readonly [string, ...string[]]>(description: string, words: T) {
  const known = words.map((word) => `"${word}"`).join(', ');
  return z
    .union([z.enum(words), direction('a direction')], {
      error: ({ input }) => `expected ${known} or three numbers such as [0, 0, 1]; found ${quoteValue(input)}`,
    })
    .meta({ description });
}

/** The message of a choice between kinds of object, told apart by one key. */
export function kindError(noun: string, key: string, words: readonly string[]) {
  const known = `${words
    .slice(0, -1)
    .map((word) => `"${word}"`)
    .join(', ')} or "${words.at(-1)}"`;
  return {
    error: ({ input }: { input?: unknown }): string => {
      const found = typeof input === 'object' && input !== null ? (input as Record<string, unknown>)[key] : input;
      return `expected ${noun}: ${known}; found ${quoteValue(found)}`;
    },
  };
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
      if (issue.code === 'unrecognized_keys') return issue.keys.map((key, i) => unknownKey(key, known, i)).join('; ');
      return `expected ${noun}; found ${quoteValue(issue.input)}`;
    },
  });
}

/** The i-th unknown key of a section; beyond those that are told, no advice is worked out. */
function unknownKey(key: string, known: readonly string[], i: number): string {
  return `unknown key ${quoteValue(key)}${i < MAX_PROBLEMS ? `: ${suggestion(key, known)}` : ''}`;
}

/** What a word that is not known may have meant: the nearest known one, or all of them. */
export function suggestion(word: string, known: readonly string[]): string {
  if (known.length === 0) return 'there are none';
  const start = word.slice(0, 80);
  const nearest = closest(start, known);
  if (distance(start.toLowerCase(), nearest.toLowerCase()) <= Math.max(2, start.length / 3))
    return `did you mean "${nearest}"?`;
  const more = known.length > 20 ? `, and ${known.length - 20} more` : '';
  return `known are ${known.slice(0, 20).join(', ')}${more}`;
}
