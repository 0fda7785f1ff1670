/** The fields that parts of several kinds have in common. */
import type { Field } from './field.ts';
import { fieldsOf } from './readSchema.ts';

/** The fields of the first kind that all the other kinds have too. */
export function sharedFields(field: Field, words: readonly string[]): readonly Field[] {
  const [first, ...others] = words.map((word) => fieldsOf(field, word));
  return (first ?? []).filter(({ key, kind }) =>
    others.every((fields) => fields.some((other) => other.key === key && other.kind === kind)),
  );
}
