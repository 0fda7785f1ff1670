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
}

const START: VacuumView = { tab: 'go', pumpDownText: '', riseText: '' };

export const useVacuumView = create<VacuumView>()(persist(() => START, { name: 'evenfall-vacuum' }));
