/** The coat on the page, and the evaluation that is under way. */
import { create } from 'zustand';
import type { Coat, EvaluateOptions, Plant } from '../../engine/index.ts';
import { useArrivalWish } from './arrivalWish.ts';
import { catchUp, useDesign } from './designStore.ts';
import { useGesture } from './editDesign.ts';
import { evaluator } from './evaluator.ts';
import { useMapView } from './mapView.ts';
import { nextTask } from './nextTask.ts';

export interface ResultState {
  /** the last coat that was computed to its end */
  readonly coat: Coat | null;
  readonly phase: 'done' | 'computing' | 'cancelled' | 'failed';
  /** share of the running evaluation that is done, 0 to 1 */
  readonly share: number;
  /** whether it has run long enough to be worth a progress bar */
  readonly isSlow: boolean;
  readonly error: string | null;
}

/** Time after which an evaluation shows its progress, ms. */
const SLOW = 300;
/**
 * While the user drags, what nothing hides is computed on few points, to a twentieth of a percent; the rays of the mass
 * budget and the last digits come at the end.
 */
const DRAFT: EvaluateOptions = { rays: 0, wantedError: 5e-4 };
/** How long panels and picture wait for the coat of a drag, so as to move with it, ms: less than anybody sees. */
export const PATIENCE = 24;
/** Longest stretch without letting the page paint and take input, ms: short before the first coat, while code is still slow. */
const STRETCH = { first: 12, later: 36 };

export const useResult = create<ResultState>(() => ({
  coat: null,
  phase: 'computing',
  share: 0,
  isSlow: false,
  error: null,
}));

/** Thrown inside an evaluation that a newer edit, or the user, has ended. */
class Ended extends Error {}

/** Name of the measure of user timing. */
const COAT_MEASURE = 'evenfall: edit to coat';

let latestRun = 0;

/** Whether arrival angles, which cost extra, are needed by the mapped quantity or wished for elsewhere. */
function wantsArrival(): boolean {
  const { quantity } = useMapView.getState();
  return quantity === 'incidence' || quantity === 'grazing' || useArrivalWish.getState().wishes > 0;
}

/** Leaves the time from edit to coat where developer tools and the bench find it; only the last one, so that none pile up. */
function timeCoat(start: number): void {
  performance.clearMeasures(COAT_MEASURE);
  performance.measure(COAT_MEASURE, { start });
}

/** Evaluates a plant; the latest call wins and ends those before it. */
export async function compute(plant: Plant, options: EvaluateOptions = {}): Promise<void> {
  const run = ++latestRun;
  const isCurrent = (): boolean => run === latestRun;
  const slow = setTimeout(() => isCurrent() && useResult.setState({ isSlow: true }), SLOW);
  useResult.setState({ phase: 'computing', share: 0, error: null });
  const start = performance.now();
  let paused = start;
  const stretch = useResult.getState().coat ? STRETCH.later : STRETCH.first;
  const step = async (share: number): Promise<void> => {
    if (!isCurrent()) throw new Ended();
    if (performance.now() - paused < stretch) return;
    useResult.setState({ share });
    await nextTask();
    paused = performance.now();
    if (!isCurrent()) throw new Ended();
  };
  try {
    const coat = await evaluator.evaluate(plant, { withArrival: wantsArrival(), ...options }, { step });
    if (!isCurrent()) return;
    catchUp();
    useResult.setState({ coat, phase: 'done', share: 1, isSlow: false });
    timeCoat(start);
  } catch (error) {
    if (!isCurrent()) return;
    const message = error instanceof Error ? error.message : String(error);
    useResult.setState({ phase: 'failed', isSlow: false, error: message });
  } finally {
    clearTimeout(slow);
  }
}

/** Ends the running evaluation and keeps the last coat. */
export function cancel(): void {
  latestRun++;
  useResult.setState({ phase: 'cancelled', isSlow: false });
}

/** Evaluates the current design again. */
export function tryAgain(): void {
  void compute(useDesign.getState().current.plant);
}

let isDrafting = false;
/** whether the coat on the page may be one with few rays */
let hasDraft = false;

/** During a drag each evaluation runs to its end and the newest design is next, or none would ever be shown. */
async function draftWhileDragging(): Promise<void> {
  if (isDrafting) return;
  isDrafting = true;
  hasDraft = true;
  let drawn: Plant | null = null;
  while (useGesture.getState().isActive && drawn !== useDesign.getState().current.plant) {
    drawn = useDesign.getState().current.plant;
    // a slow coat must not keep panels from following the edits after this one
    const late = setInterval(catchUp, PATIENCE);
    await compute(drawn, DRAFT);
    clearInterval(late);
  }
  isDrafting = false;
}

/** Evaluates the design now and after each edit, and when the mapped quantity asks for more. */
export function followDesign(): void {
  tryAgain();
  useDesign.subscribe(({ current }, before) => {
    if (current.plant === before.current.plant) return;
    if (useGesture.getState().isActive) void draftWhileDragging();
    else void compute(current.plant);
  });
  useGesture.subscribe(({ isActive }, before) => {
    if (!before.isActive || isActive || !hasDraft) return;
    hasDraft = false;
    tryAgain();
  });
  const askForArrival = (): void => {
    if (wantsArrival() && useResult.getState().coat?.arrival === null) tryAgain();
  };
  useMapView.subscribe(askForArrival);
  useArrivalWish.subscribe(askForArrival);
}
