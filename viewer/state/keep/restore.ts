/** Brings kept states back onto the page. */
import { openPlant } from '../../../engine/index.ts';
import { useDesign, type Snapshot } from '../designStore.ts';
import { adopt } from '../editDesign.ts';
import { refuse } from '../refusal.ts';
import { readState, type ReadState } from './database.ts';
import { knowFiles } from './fileIds.ts';
import { noteFailure } from './keepStore.ts';
import { traceOf, setTrace, type DesignTrace, type Trace } from './lineage.ts';

/** A design that is on the page already keeps its trace, so that its states stay one family. */
function designOf({ design }: ReadState): DesignTrace {
  const present = traceOf(useDesign.getState().current)?.design;
  if (present?.id === design.id) return present;
  return { id: design.id, saved: design.saved, ready: Promise.resolve() };
}

/** A kept state as a snapshot, or null with the problems shown. */
export function snapshotOf(read: ReadState): Snapshot | null {
  const { state, text, files } = read;
  knowFiles(state, files);
  const opened = openPlant(text, files);
  if (!opened.ok) {
    refuse(`“${state.name}” cannot be restored`, opened.problems);
    return null;
  }
  const snapshot: Snapshot = { file: opened.file, files, plant: opened.plant, presetId: null };
  const trace: Trace = { design: designOf(read), at: state.at, label: state.label, value: state.value, isStored: true };
  setTrace(snapshot, trace);
  return snapshot;
}

/**
 * Puts a kept state on the page, as a step that can be undone.
 *
 * @param at which state; the design's last one by default
 * @param verb what the step is called, before the design's name
 */
export async function restore(designId: string, verb: string, at?: number): Promise<boolean> {
  try {
    const read = await readState(designId, at);
    if (!read) {
      refuse('The design cannot be restored', [{ path: '', message: 'this state is no longer kept' }]);
      return false;
    }
    const snapshot = snapshotOf(read);
    if (snapshot) adopt(snapshot, `${verb} ${read.state.name}`);
    return snapshot !== null;
  } catch (error) {
    noteFailure(error);
    return false;
  }
}
