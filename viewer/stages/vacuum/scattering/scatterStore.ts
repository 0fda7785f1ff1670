/** Runs that follow atoms through the gas: one for this shot, one over many pressures. The latest run wins. */
import { create } from 'zustand';
import { logSpaced } from '../../../../engine/gas/pressureSweep.ts';
import type { Coat } from '../../../../engine/index.ts';
import type { Control } from '../../../../engine/transport/transport.ts';
import { evaluator, flyAtoms } from '../../../state/evaluator.ts';
import { shotInGas, type ShotInGas } from './shotInGas.ts';
import { sweepRow, type SweepRow } from './sweepRow.ts';

export type ScatterJob = 'shot' | 'sweep';

export interface ScatterState {
  /** what is running */
  readonly job: ScatterJob | null;
  /** share of it that is done, 0 to 1 */
  readonly share: number;
  readonly shot: ShotInGas | null;
  /** in order of pressure, as far as they have come */
  readonly sweep: readonly SweepRow[];
  /** the coat that the sweep belongs to */
  readonly sweepOf: Coat | null;
  /** why the last run did not come to its end; null if it did */
  readonly notice: string | null;
}

export const useScatter = create<ScatterState>(() => ({
  job: null,
  share: 0,
  shot: null,
  sweep: [],
  sweepOf: null,
  notice: null,
}));

export interface ScatterSettings {
  readonly wantedError: number;
  readonly mostAtoms: number;
  readonly seed: number;
}

/** Longest stretch without letting the page paint and take input, ms. */
const STRETCH = 12;
/** Pressures of a sweep, Pa: from where nothing is scattered to 1 mbar. */
const SWEEP = { from: 1e-5, to: 100, count: 15 } as const;
/** A point of the sweep is one of many: fewer atoms will do. */
const SWEEP_ATOMS = 65_536;
const SWEEP_ERROR = 0.03;

/** Thrown inside a run that the user, or a newer one, has ended. */
class Ended extends Error {}

let latest = 0;
/** Where the page computes. */
const TOOLS = { evaluator, run: flyAtoms } as const;

/** Lets the page breathe, reports progress, and ends the run when it is no longer wanted. */
function controlOf(mine: number): Control {
  let paused = performance.now();
  return {
    step: async (share) => {
      if (mine !== latest) throw new Ended();
      if (performance.now() - paused < STRETCH) return;
      useScatter.setState({ share });
      await new Promise((resolve) => setTimeout(resolve, 0));
      paused = performance.now();
      if (mine !== latest) throw new Ended();
    },
  };
}

async function start(job: ScatterJob, work: (control: Control) => Promise<void>): Promise<void> {
  const mine = ++latest;
  useScatter.setState({ job, share: 0, notice: null });
  try {
    await work(controlOf(mine));
    if (mine === latest) useScatter.setState({ job: null, share: 1 });
  } catch (error) {
    if (mine !== latest) return;
    const reason = error instanceof Error ? error.message : String(error);
    useScatter.setState({ job: null, notice: `It could not be worked out: ${reason}` });
  }
}

/** Follows atoms at the pressure of the shot. */
export async function runShot(coat: Coat, settings: ScatterSettings): Promise<void> {
  await start('shot', async (control) => {
    const shot = await shotInGas(coat, { ...settings, ...TOOLS }, control);
    useScatter.setState({ shot });
  });
}

/** Follows atoms at many pressures; what has come is shown at once. */
export async function runSweep(coat: Coat, settings: ScatterSettings): Promise<void> {
  await start('sweep', async (control) => {
    const pressures = logSpaced(SWEEP.from, SWEEP.to, SWEEP.count);
    useScatter.setState({ sweep: [], sweepOf: coat });
    for (const [i, pressure] of pressures.entries()) {
      const options = {
        pressure,
        wantedError: Math.max(settings.wantedError, SWEEP_ERROR),
        mostAtoms: Math.min(settings.mostAtoms, SWEEP_ATOMS),
        seed: settings.seed,
        ...TOOLS,
      };
      const step: Control['step'] = (share) => control.step((i + share) / pressures.length);
      const one = await shotInGas(coat, options, { step });
      useScatter.setState(({ sweep }) => ({ sweep: [...sweep, sweepRow(one)] }));
    }
  });
}

/** Ends what is running; what was there before stays. */
export function cancelScatter(): void {
  latest++;
  useScatter.setState({ job: null, notice: 'Cancelled. What was worked out before is still shown.' });
}
