import { beforeEach, expect, test } from 'vitest';
import { useDesign, type DesignState } from '../../viewer/state/designStore.ts';
import { adopt, beginGesture, editDesign, endGesture, undo } from '../../viewer/state/editDesign.ts';
import { withSetField } from './filamentEdits.ts';
import { splitOff, traceOf, traceStep, type Step } from '../../viewer/state/keep/lineage.ts';
import { choosePreset } from '../../viewer/state/openFiles.ts';
import { presets } from '../../presets/index.ts';

let steps: (Step | null)[] = [];
useDesign.subscribe((state: DesignState, before: DesignState) => {
  if (state.current !== before.current) steps.push(traceStep(state, before));
});

const height = (value: string, label = 'height of outer') =>
  expect(editDesign(label, (file) => withSetField(file, 0, 'height', value))).toEqual([]);
const trace = () => traceOf(useDesign.getState().current);

beforeEach(() => {
  choosePreset(presets[0]!.id);
  endGesture(); // the next edit is a step of its own
  steps = [];
});

test('a preset is not kept until it is edited; then both are, as one design', () => {
  expect(trace()).toBeUndefined();
  height('0.95 m');
  const [step] = steps;
  expect(step?.base?.design).toBe(step?.trace.design);
  expect(step?.base?.at).toBe(step?.trace.design.saved);
  expect(step?.trace).toMatchObject({ label: 'height of outer', value: '0.95 m' });
  expect(step!.trace.at).toBeGreaterThan(step!.base!.at);
});

test('edits of one step are one state, with the last value; the next step is another', () => {
  beginGesture();
  height('0.95 m');
  height('0.96 m');
  height('0.97 m');
  endGesture();
  height('1 m');
  const times = steps.map((step) => step?.trace.at);
  expect(times[1]).toBe(times[0]);
  expect(times[2]).toBe(times[0]);
  expect(steps[2]?.trace.value).toBe('0.97 m');
  expect(times[3]).toBeGreaterThan(times[0]!);
});

test('a step that goes on after saving is a new state, so that the saved one stays', () => {
  beginGesture();
  height('0.95 m');
  const saved = trace()!;
  saved.design.saved = saved.at;
  height('0.96 m');
  endGesture();
  expect(trace()!.at).not.toBe(saved.at);
});

test('undo comes back to a known state, down to the preset', () => {
  height('0.95 m');
  const first = trace()!;
  endGesture();
  height('1 m');
  undo();
  expect(trace()).toBe(first);
  undo();
  expect(trace()?.at).toBe(first.design.saved);
  expect(steps.at(-1)?.base).toBeNull();
});

test('an opened file is a design of its own, safe in its file; another preset is none', () => {
  height('0.95 m');
  const edited = trace()!.design;
  const { current } = useDesign.getState();
  adopt({ ...current }, 'open Other plant.JSON');
  expect(steps.at(-1)?.isOpened).toBe(true);
  expect(trace()!.design).not.toBe(edited);
  expect(trace()!.at).toBe(trace()!.design.saved);
  choosePreset(presets[1]!.id);
  expect(steps.at(-1)).toBeNull();
});

test('an edit whose name starts like an opening is still an edit', () => {
  height('0.95 m', 'open coil of four-loop');
  expect(steps[0]?.isOpened).toBe(false);
});

test('a copy takes all states on the page with it, and leaves the old design alone', () => {
  height('0.95 m');
  endGesture();
  height('1 m');
  const old = trace()!.design;
  const copy = splitOff(useDesign.getState(), old);
  expect(copy.id).not.toBe(old.id);
  const { current, past } = useDesign.getState();
  const family = [current, ...past.map(({ other }) => other)].map((snapshot) => traceOf(snapshot)?.design);
  expect(family).not.toContain(old);
  expect(family.filter((design) => design === copy).length).toBe(3);
});
