/** Works out the coats of variants that have none, one after another, whenever the page itself has nothing to do. */
import { evaluator } from '../evaluator.ts';
import { useResult } from '../resultStore.ts';
import { announce } from './announcement.ts';
import { finalCoat, updateVariant, useVariants, type Variant } from './variantStore.ts';

/** Longest stretch without letting the page paint and take input, ms. */
const STRETCH = 12;

/** Thrown inside an evaluation that the page, or the user, has ended. */
class Ended extends Error {}

interface Run {
  readonly id: string;
  isEnded: boolean;
}

let running: Run | null = null;
let isFollowing = false;

const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const phaseOf = (id: string): Variant['phase'] | undefined =>
  useVariants.getState().variants.find((variant) => variant.id === id)?.phase;

const nameOf = (id: string): string =>
  useVariants.getState().variants.find((variant) => variant.id === id)?.name ?? 'A variant';

/** What the page has just worked out itself need not be worked out again. */
function takeCoatOfPage(): void {
  const coat = finalCoat();
  if (!coat) return;
  for (const { id, snapshot, coat: own } of useVariants.getState().variants)
    if (!own && snapshot.plant === coat.plant) updateVariant(id, { coat, phase: 'done', share: 1, error: null });
}

async function evaluate({ id, snapshot }: Variant, run: Run): Promise<void> {
  const check = (): void => {
    if (run.isEnded || phaseOf(id) !== 'computing') throw new Ended();
  };
  let paused = performance.now();
  const step = async (share: number): Promise<void> => {
    check();
    if (performance.now() - paused < STRETCH) return;
    updateVariant(id, { share });
    await nextTask();
    paused = performance.now();
    check();
  };
  updateVariant(id, { phase: 'computing', share: 0, error: null });
  try {
    const coat = await evaluator.evaluate(snapshot.plant, {}, { step });
    check();
    updateVariant(id, { coat, phase: 'done', share: 1 });
    announce(`${nameOf(id)} is computed.`);
  } catch (error) {
    const phase = phaseOf(id);
    if (phase !== 'computing') return;
    // the page needed the workers: what they had finished is kept, and the variant takes its turn again
    if (error instanceof Ended) updateVariant(id, { phase: 'waiting', share: 0 });
    else {
      const message = error instanceof Error ? error.message : String(error);
      updateVariant(id, { phase: 'failed', error: message });
      announce(`${nameOf(id)} could not be computed: ${message}`);
    }
  }
}

/** Starts the next evaluation if the page has nothing to do; ends the running one if it has. */
function look(): void {
  if (!isFollowing) return;
  takeCoatOfPage();
  if (useResult.getState().phase === 'computing') {
    if (running) running.isEnded = true;
    return;
  }
  if (running) return;
  const next = useVariants.getState().variants.find(({ phase }) => phase === 'waiting');
  if (!next) return;
  const run: Run = { id: next.id, isEnded: false };
  running = run;
  void evaluate(next, run).finally(() => {
    running = null;
    look();
  });
}

/** Stops a variant's evaluation, running or waiting, until it is asked for again. */
export function stopVariant(id: string): void {
  if (phaseOf(id) === 'computing' || phaseOf(id) === 'waiting') updateVariant(id, { phase: 'stopped', share: 0 });
}

/** Asks for a variant's coat after it was stopped or failed. */
export function evaluateVariant(id: string): void {
  if (phaseOf(id) === 'stopped' || phaseOf(id) === 'failed') updateVariant(id, { phase: 'waiting', error: null });
}

/** Stops all evaluations of variants. */
export function stopAllVariants(): void {
  for (const { id } of useVariants.getState().variants) stopVariant(id);
}

/** Keeps the variants evaluated; returns how to end that, the running evaluation too. */
export function followVariants(): () => void {
  isFollowing = true;
  const ends = [
    useVariants.subscribe(({ variants }, before) => variants !== before.variants && look()),
    useResult.subscribe(({ phase, coat }, before) => (phase !== before.phase || coat !== before.coat) && look()),
  ];
  look();
  return () => {
    isFollowing = false;
    if (running) running.isEnded = true;
    for (const end of ends) end();
  };
}
