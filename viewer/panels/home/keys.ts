/** All keys of the page in one list, so that the help shows what is true. */
import { create } from 'zustand';

export interface KeyHelp {
  /** as one presses them: "Ctrl+Z", "Arrow keys" */
  readonly keys: string;
  readonly does: string;
}

export interface KeyGroup {
  readonly title: string;
  readonly entries: readonly KeyHelp[];
}

const EVERYWHERE = 'Everywhere';

/** Keys whose own part of the page does not register them. */
const BUILT_IN: readonly KeyGroup[] = [
  {
    title: EVERYWHERE,
    entries: [
      { keys: 'Ctrl+Z', does: 'Undo' },
      { keys: 'Ctrl+Shift+Z', does: 'Redo' },
      { keys: 'Ctrl+S', does: 'Save the design' },
      { keys: 'Ctrl+Shift+S', does: 'Save the design under another name' },
    ],
  },
  {
    title: 'In the picture of the tank',
    entries: [
      { keys: 'Arrow keys', does: 'Turn the view' },
      { keys: '+ and −', does: 'Zoom' },
    ],
  },
  {
    title: 'In a field',
    entries: [
      { keys: 'Enter', does: 'Take the value over' },
      { keys: 'Escape', does: 'Go back to the value before' },
      { keys: 'Arrow up, arrow down', does: 'Step the last digit; with Shift ten times as far' },
    ],
  },
];

export const useKeyGroups = create<{ readonly groups: readonly KeyGroup[] }>(() => ({ groups: BUILT_IN }));

/** Adds keys to the help, under a title; returns how to take them out again. */
export function registerKeys(title: string, entries: readonly KeyHelp[]): () => void {
  const group: KeyGroup = { title, entries };
  useKeyGroups.setState(({ groups }) => ({ groups: [...groups, group] }));
  return () => useKeyGroups.setState(({ groups }) => ({ groups: groups.filter((item) => item !== group) }));
}

/** Groups of the same title as one, in the order of their first; keys registered twice once. */
export function mergedGroups(groups: readonly KeyGroup[]): readonly KeyGroup[] {
  const titles = [...new Set(groups.map(({ title }) => title))];
  return titles.map((title) => {
    const entries = groups.filter((group) => group.title === title).flatMap((group) => group.entries);
    return {
      title,
      entries: entries.filter(({ keys }, i) => entries.findIndex((entry) => entry.keys === keys) === i),
    };
  });
}
