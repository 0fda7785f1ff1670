/** The design on the page, and the edits that led to it. */
import { createStore, useStore } from 'zustand';
import { formatProblem, openPlantFile, type DesignFile, type NamedFiles, type Plant } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';

/** A design as opened: always sound. */
export interface Snapshot {
  readonly file: DesignFile;
  /** content of the files that the design names */
  readonly files: NamedFiles;
  readonly plant: Plant;
  /** the preset that it still is, or null once edited or opened from a file */
  readonly presetId: string | null;
}

/** An edit that can be taken back or done again. */
export interface Step {
  /** what it did, as in "Undo height of outer" */
  readonly label: string;
  /** the design on the other side of it */
  readonly other: Snapshot;
}

export interface DesignState {
  readonly current: Snapshot;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

function firstPreset(): Snapshot {
  const [preset] = presets;
  if (!preset) throw new Error('expected at least one preset; found none');
  const opened = openPlantFile(preset.file);
  if (!opened.ok) throw new Error(opened.problems.map(formatProblem).join('\n'));
  return { file: opened.file, files: new Map(), plant: opened.plant, presetId: preset.id };
}

const design = createStore<DesignState>(() => ({ current: firstPreset(), past: [], future: [] }));

/** The design as panels show it: during a drag it follows together with the coat, so that each move renders them once. */
export const shownDesign = createStore<DesignState>(() => design.getState());
let isHeld = false;

/** Brings what panels show up to date. */
export function catchUp(): void {
  if (shownDesign.getState() !== design.getState()) shownDesign.setState(design.getState(), true);
}

/** Holds panels at what they show until they are told to catch up, or lets them follow every edit again. */
export function holdPanels(hold: boolean): void {
  isHeld = hold;
  if (!hold) catchUp();
}

design.subscribe(() => {
  if (!isHeld) catchUp();
});

/** The design: as a hook what panels show, by its functions as it is now. */
export const useDesign = Object.assign(<T>(select: (state: DesignState) => T): T => useStore(shownDesign, select), {
  getState: design.getState,
  getInitialState: design.getInitialState,
  setState: design.setState,
  subscribe: design.subscribe,
});
