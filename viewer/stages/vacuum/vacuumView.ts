/** How the Vacuum stage is looked at, and readings pasted into it. Kept by the browser; none of it is the design's. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';

export const VACUUM_TABS = ['go', 'gas', 'scattering', 'film', 'pump-down', 'rise', 'glow'] as const;
export type VacuumTab = (typeof VACUUM_TABS)[number];

export interface VacuumView {
  readonly tab: VacuumTab;
  /** gauge readings of a pump-down, as pasted */
  readonly pumpDownText: string;
  /** gauge readings with all valves shut, as pasted */
  readonly riseText: string;
  /** where the following of atoms stops: at this standard error of a cell over the mean, or at so many atoms */
  readonly scatterError: number;
  readonly scatterAtoms: number;
  readonly scatterSeed: number;
}

const START: VacuumView = {
  tab: 'go',
  pumpDownText: '',
  riseText: '',
  scatterError: 0.03,
  scatterAtoms: 4_000_000,
  scatterSeed: 1,
};

export const useVacuumView = create<VacuumView>()(persist(() => START, { name: 'evenfall-vacuum' }));
