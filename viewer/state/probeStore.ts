/** The probe: one place on the mirror, looked at closely. */
import { create } from 'zustand';
import { createProbe, type Coat, type Probe, type ProbeReading } from '../../engine/index.ts';
import { nextTask } from './nextTask.ts';
import { useResult } from './resultStore.ts';

export interface ProbeState {
  /** m, in the mirror's frame */
  readonly x: number;
  readonly y: number;
  /** null off the glass, or before the first coat */
  readonly reading: ProbeReading | null;
}

export const useProbe = create<ProbeState>(() => ({ x: 0, y: 0, reading: null }));

let probe: Probe | null = null;
let probed: Coat | null = null;

/** Moves the probe, m. */
export function probeAt(x: number, y: number): void {
  useProbe.setState({ x, y, reading: probe?.(x, y) ?? null });
}

/** Makes a probe of the coat and reads the old place again; off the new glass, one halfway out. */
async function adoptCoat(coat: Coat): Promise<void> {
  probed = coat;
  if (!probe) await nextTask(); // the first time is the slowest, and the page has just drawn its coat
  const made = await createProbe(coat.plant);
  if (probed !== coat) return;
  probe = made;
  const { x, y } = useProbe.getState();
  const reading = made(x, y);
  if (reading) return useProbe.setState({ reading });
  const { centerX, clearInnerRadius, clearOuterRadius } = coat.plant.shape;
  const halfway = (clearInnerRadius + clearOuterRadius) / 2;
  probeAt(centerX - halfway * Math.SQRT1_2, -halfway * Math.SQRT1_2);
}

/** Keeps the probe on the coat that the page shows. */
export function followResult(): void {
  useResult.subscribe(({ coat }, before) => {
    if (coat && coat !== before.coat) void adoptCoat(coat);
  });
}
