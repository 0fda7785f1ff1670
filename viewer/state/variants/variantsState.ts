/** The pinned variants as the page keeps them for itself. */
import type { Problem } from '../../../engine/index.ts';
import { variantsDocument, variantsOf, type VariantsDocument } from './variantsDocument.ts';
import { makeVariant, useVariants } from './variantStore.ts';

/** The pinned variants as plain data, to be kept and handed to restoreVariants. */
export function variantsState(): VariantsDocument {
  return variantsDocument(useVariants.getState().variants);
}

/** Puts kept variants in the place of the pinned ones; answers what is wrong with them, and then has changed nothing. */
export function restoreVariants(json: unknown): readonly Problem[] {
  const opened = variantsOf(json);
  if (!opened.ok) return opened.problems;
  const variants = opened.variants.map(({ name, snapshot }) => makeVariant(name, snapshot));
  useVariants.setState({ variants, chosenA: null, chosenB: null, deleted: null });
  return [];
}
