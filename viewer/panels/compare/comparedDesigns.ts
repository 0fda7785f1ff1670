/** The designs that are compared: the one on the page, and the variants. */
import { useMemo, useRef } from 'react';
import type { Coat } from '../../../engine/index.ts';
import { useDesign, type Snapshot } from '../../state/designStore.ts';
import { useResult } from '../../state/resultStore.ts';
import { comparedIds, CURRENT, useVariants, type VariantPhase } from '../../state/variants/variantStore.ts';

export interface ComparedDesign {
  readonly id: string;
  readonly name: string;
  readonly snapshot: Snapshot;
  readonly coat: Coat | null;
  readonly phase: VariantPhase;
  readonly share: number;
  readonly error: string | null;
}

const CURRENT_NAME = 'Current design';

const PHASES = { done: 'done', computing: 'computing', cancelled: 'stopped', failed: 'failed' } as const;

/** The design on the page with its own coat; while a new coat is on its way, the last pair that belonged together. */
function useCurrentDesign(): ComparedDesign {
  const snapshot = useDesign((state) => state.current);
  const coat = useResult((state) => state.coat);
  const phase = useResult((state) => state.phase);
  const error = useResult((state) => state.error);
  const settled = useRef<{ readonly snapshot: Snapshot; readonly coat: Coat } | null>(null);
  return useMemo(() => {
    if (coat?.plant === snapshot.plant) settled.current = { snapshot, coat };
    const shown = settled.current ?? { snapshot, coat: null };
    return { id: CURRENT, name: CURRENT_NAME, ...shown, phase: PHASES[phase], share: 0, error };
  }, [snapshot, coat, phase, error]);
}

/** The design on the page first, then all variants in the order of pinning. */
export function useComparedDesigns(): readonly ComparedDesign[] {
  const current = useCurrentDesign();
  const variants = useVariants((state) => state.variants);
  return useMemo(() => [current, ...variants], [current, variants]);
}

/** The two that are compared, or null while nothing is pinned. */
export function useComparedPair(): { readonly a: ComparedDesign; readonly b: ComparedDesign } | null {
  const designs = useComparedDesigns();
  const state = useVariants();
  return useMemo(() => {
    const ids = comparedIds(state);
    const [a, b] = [ids?.a, ids?.b].map((id) => designs.find((design) => design.id === id));
    return a && b ? { a, b } : null;
  }, [designs, state]);
}
