/** The order of a form: single values first, then points and directions, then sections and lists. */
import type { Field } from './field.ts';

const BLOCKS: readonly Field['kind'][] = ['choice', 'group', 'list'];

/** Fields in the order in which a form shows them. */
export function inOrder(fields: readonly Field[]): readonly Field[] {
  const rank = ({ kind }: Field): number => (BLOCKS.includes(kind) ? 2 : kind === 'tuple' ? 1 : 0);
  return fields.toSorted((a, b) => rank(a) - rank(b));
}
