/** Parts of one kind among the selected. */
import type { Part } from '../../state/selection.ts';

export type Parts<Kind extends Part['kind']> = readonly (Part & { readonly kind: Kind })[];

export function partsOf<Kind extends Part['kind']>(parts: readonly Part[], kind: Kind): Parts<Kind> {
  return parts.filter((part): part is Part & { readonly kind: Kind } => part.kind === kind);
}
