/** What a typed text puts into the file. */
import type { Field } from './field.ts';

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;
/** "1,250" may be 1.25 or 1250: left as text, for the engine to refuse. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** The file's value for a text; nothing typed takes an optional field away, and its default holds again. */
export function typedValue(field: Field, text: string): unknown {
  if (text === '' && field.isOptional) return undefined;
  if (field.kind !== 'number') return text;
  return NUMBER.test(text) && !AMBIGUOUS.test(text) ? Number(text.replace(',', '.')) : text;
}
