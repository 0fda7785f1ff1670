/** Variants: pinned states of the design, each with its coat, and the two that are compared. */
import { create } from 'zustand';
import type { Coat } from '../../../engine/index.ts';
import { useDesign, type Snapshot } from '../designStore.ts';
import { adopt, useGesture } from '../editDesign.ts';
import { useResult } from '../resultStore.ts';
import { announce } from './announcement.ts';
import { MAX_VARIANTS } from './variantsDocument.ts';

/** `stopped` was ended by the user and waits to be asked again. */
export type VariantPhase = 'done' | 'waiting' | 'computing' | 'stopped' | 'failed';

export interface Variant {
  readonly id: string;
  readonly name: string;
  readonly snapshot: Snapshot;
  readonly coat: Coat | null;
  readonly phase: VariantPhase;
  /** share of its evaluation that is done, 0 to 1 */
  readonly share: number;
  /** why it failed */
  readonly error: string | null;
}

export interface VariantsState {
  /** in the order of pinning */
  readonly variants: readonly Variant[];
  /** what was chosen to be compared: ids, or null for the usual choice */
  readonly chosenA: string | null;
  readonly chosenB: string | null;
  /** the variant deleted last, and where it stood */
  readonly deleted: { readonly variant: Variant; readonly index: number } | null;
}

/** Stands for the design on the page where an id is due. */
export const CURRENT = 'current';
const MAX_NAME = 80;

const NONE: VariantsState = { variants: [], chosenA: null, chosenB: null, deleted: null };

export const useVariants = create<VariantsState>(() => NONE);

let lastId = 0;

/** A variant that is still to be evaluated, unless its coat is known. */
export function makeVariant(name: string, snapshot: Snapshot, coat: Coat | null = null): Variant {
  const phase = coat ? 'done' : 'waiting';
  return { id: `v${++lastId}`, name, snapshot, coat, phase, share: coat ? 1 : 0, error: null };
}

const isTaken = (name: string, variants: readonly Variant[]): boolean =>
  variants.some((variant) => variant.name.toLowerCase() === name.toLowerCase());

/** The plant's name for the first of its variants, then "Variant 2" and so on. */
function nextName(plantName: string, variants: readonly Variant[]): string {
  if (!isTaken(plantName, variants)) return plantName;
  let n = variants.length + 1;
  while (isTaken(`Variant ${n}`, variants)) n++;
  return `Variant ${n}`;
}

/** The page's coat if it is final: those of a drag make do with fewer rays. */
export function finalCoat(): Coat | null {
  const { coat, phase } = useResult.getState();
  return phase === 'done' && !useGesture.getState().isActive ? coat : null;
}

/** Pins the current state; answers why not, or null if it was done. */
export function pinCurrent(name?: string): string | null {
  const { variants } = useVariants.getState();
  const { current } = useDesign.getState();
  const coat = finalCoat();
  if (variants.length >= MAX_VARIANTS) {
    const refusal = `There are ${MAX_VARIANTS} variants already; delete one first.`;
    announce(refusal);
    return refusal;
  }
  const known = coat?.plant === current.plant ? coat : null;
  const variant = makeVariant(name ?? nextName(current.file.name, variants), current, known);
  useVariants.setState({ variants: [...variants, variant], chosenA: null, chosenB: null });
  announce(`Pinned as ${variant.name}.`);
  return null;
}

/** Changes what is known of a variant; does nothing if it is gone. */
export function updateVariant(id: string, change: Partial<Omit<Variant, 'id'>>): void {
  useVariants.setState(({ variants }) => ({
    variants: variants.map((variant) => (variant.id === id ? { ...variant, ...change } : variant)),
  }));
}

/** Gives a variant another name; answers why not, or null if it was done. */
export function renameVariant(id: string, name: string): string | null {
  const trimmed = name.trim();
  const others = useVariants.getState().variants.filter((variant) => variant.id !== id);
  if (trimmed === '' || trimmed.length > MAX_NAME)
    return `Expected a name of 1 to ${MAX_NAME} characters; found ${trimmed.length}.`;
  if (isTaken(trimmed, others)) return `Another variant is called “${trimmed}”.`;
  updateVariant(id, { name: trimmed });
  announce(`Renamed to ${trimmed}.`);
  return null;
}

/** Deletes a variant; it can be brought back until the next one is deleted. */
export function deleteVariant(id: string): void {
  const { variants, chosenA, chosenB } = useVariants.getState();
  const index = variants.findIndex((variant) => variant.id === id);
  const variant = variants[index];
  if (!variant) return;
  useVariants.setState({
    variants: variants.toSpliced(index, 1),
    chosenA: chosenA === id ? null : chosenA,
    chosenB: chosenB === id ? null : chosenB,
    deleted: { variant, index },
  });
  announce(`Deleted ${variant.name}. It can be brought back.`);
}

/** Puts the variant deleted last back in its place. */
export function bringBack(): void {
  const { variants, deleted } = useVariants.getState();
  if (!deleted || variants.length >= MAX_VARIANTS) return;
  const { variant, index } = deleted;
  const name = isTaken(variant.name, variants) ? nextName(variant.name, variants) : variant.name;
  const phase = variant.phase === 'computing' ? 'waiting' : variant.phase;
  useVariants.setState({ variants: variants.toSpliced(index, 0, { ...variant, name, phase }), deleted: null });
  announce(`Brought back ${name}.`);
}

/** Makes a variant the current design, as an edit that can be undone. */
export function restoreVariant(id: string): void {
  const variant = useVariants.getState().variants.find((item) => item.id === id);
  if (!variant) return;
  adopt(variant.snapshot, `restore ${variant.name}`);
  announce(`${variant.name} is the current design.`);
}

/** The two that are compared, or null while nothing is pinned. */
export function comparedIds({ variants, chosenA, chosenB }: VariantsState): { a: string; b: string } | null {
  const last = variants.at(-1)?.id;
  if (last === undefined) return null;
  const b = chosenB ?? (chosenA === CURRENT ? last : CURRENT);
  return { a: chosenA ?? (b === last ? CURRENT : last), b };
}

/** Chooses one side of the comparison; choosing what the other side has swaps the two. */
export function compare(side: 'a' | 'b', id: string): void {
  const pair = comparedIds(useVariants.getState());
  if (!pair) return;
  const other = side === 'a' ? pair.b : pair.a;
  const rest = other === id ? pair[side] : other;
  useVariants.setState(side === 'a' ? { chosenA: id, chosenB: rest } : { chosenA: rest, chosenB: id });
}

/** Swaps the two that are compared. */
export function swapCompared(): void {
  const pair = comparedIds(useVariants.getState());
  if (pair) useVariants.setState({ chosenA: pair.b, chosenB: pair.a });
}
