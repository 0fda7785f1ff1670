/** What form and tree do to the design on the page: one step for all selected parts, or nothing and a reason. */
import { beforeEach, describe, expect, test } from 'vitest';
import type { DesignFile } from '../../engine/index.ts';
import { changeField } from '../../viewer/panels/plant/formEdits.ts';
import { add, deleteSelected, duplicateSelected, toggleOutOfUse } from '../../viewer/panels/plant/tree/treeActions.ts';
import { reveal, useTree } from '../../viewer/panels/plant/tree/treeState.ts';
import { useDesign } from '../../viewer/state/designStore.ts';
import { undo } from '../../viewer/state/editDesign.ts';
import { select, selectAll, useSelection, type Part } from '../../viewer/state/selection.ts';

const first = useDesign.getState().current;
const file = (): DesignFile => useDesign.getState().current.file;
const lastStep = (): string | undefined => useDesign.getState().past.at(-1)?.label;
const filament = (number: number): Part => ({ kind: 'filament', set: 0, number });

beforeEach(() => {
  useDesign.setState({ current: first, past: [], future: [] });
  select(null);
});

describe('a field of the form', () => {
  test('of one part is one step with its name', () => {
    expect(changeField([{ kind: 'set', index: 0 }], ['diameter'], () => '114 in', 'diameter')).toBeNull();
    expect(file().filaments[0]).toMatchObject({ diameter: '114 in' });
    expect(lastStep()).toBe('diameter of outer');
  });

  test('of several parts changes all of them in one step', () => {
    const parts: Part[] = [0, 1, 2].map((index) => ({ kind: 'witness', index }));
    expect(changeField(parts, ['diameter'], () => '1 in', 'diameter')).toBeNull();
    expect(file().witnesses!.map(({ diameter }) => diameter)).toEqual(['1 in', '1 in', '1 in']);
    expect(useDesign.getState().past.map(({ label }) => label)).toEqual(['diameter of 3 witnesses']);
    undo();
    expect(file()).toBe(first.file);
  });

  test('that is refused changes nothing and says why without its path, once', () => {
    const parts: Part[] = [0, 1].map((index) => ({ kind: 'witness', index }));
    const reason = changeField(parts, ['diameter'], () => '3', 'diameter');
    expect(reason).toBe('expected a length with its unit, such as "2.6 m"; found "3" (the unit is missing)');
    expect(file()).toBe(first.file);
  });

  test('that contradicts another names the other', () => {
    const reason = changeField([{ kind: 'tank' }], ['diameter'], () => '2.7 m', 'diameter');
    expect(reason).toMatch(/^filaments\[0\]\.diameter: .* outside the tank/);
  });

  test('of the plant itself is its name', () => {
    expect(changeField([null], ['name'], () => 'Tarn Hill, rewired', 'name')).toBeNull();
    expect([file().name, lastStep()]).toEqual(['Tarn Hill, rewired', 'name of the plant']);
  });
});

describe('the tree', () => {
  test('marks the selected filaments as out of use, and in use again', () => {
    selectAll([filament(2), filament(7)]);
    expect(toggleOutOfUse()).toBeNull();
    expect(file().filaments[0]!.exceptions?.map(({ filament: number }) => number)).toEqual([2, 7]);
    selectAll([filament(2), filament(7), filament(8)]);
    toggleOutOfUse();
    expect(file().filaments[0]!.exceptions).toHaveLength(3);
    toggleOutOfUse();
    expect(file().filaments[0]!.exceptions).toBeUndefined();
  });

  test('marks all filaments of a feed', () => {
    const { feed } = first.plant.filaments[0]!;
    select({ kind: 'feed', name: feed! });
    toggleOutOfUse();
    const { filaments } = useDesign.getState().current.plant;
    expect(filaments.every((one) => one.outOfUse === (one.feed === feed))).toBe(true);
  });

  test('selects what it adds and duplicates, and what is beside what it deletes', () => {
    expect(add('witness')).toBeNull();
    const index = first.file.witnesses!.length;
    expect(useSelection.getState().parts).toEqual([{ kind: 'witness', index }]);
    expect(duplicateSelected()).toBeNull();
    expect(useSelection.getState().parts).toEqual([{ kind: 'witness', index: index + 1 }]);
    expect(deleteSelected()).toBeNull();
    expect(useSelection.getState().parts).toEqual([{ kind: 'witness', index }]);
    deleteSelected();
    expect(file()).toEqual(first.file);
  });

  test('refuses to delete a type in use, and says why', () => {
    select({ kind: 'type', name: Object.keys(first.file.filamentTypes)[0]! });
    expect(deleteSelected()).toContain('“outer” is made of it');
    expect(file()).toBe(first.file);
    expect(useDesign.getState().past).toEqual([]);
  });

  test('opens the branches of a part that was selected elsewhere', () => {
    reveal(filament(30));
    expect([...useTree.getState().open]).toEqual(expect.arrayContaining(['sets', 'set/0']));
    expect(useTree.getState().active).toBe('filament/0/30');
  });
});
