/** How a form changes the design: one edit for all selected parts, refused as a whole. */
import { formatProblem, type DesignFile, type Problem } from '../../../engine/index.ts';
import { joinPath } from '../../../engine/design/problem.ts';
import { useDesign } from '../../state/designStore.ts';
import { editDesign } from '../../state/editDesign.ts';
import { nameOfPart, pathOfPart, type Edited } from '../../state/edits/parts.ts';
import { valueAt, type Path } from '../../state/edits/path.ts';
import { partValue, withField } from '../../state/edits/setField.ts';
import { select, type Part } from '../../state/selection.ts';

/** What several parts of one kind are called together. */
const PLURALS: Readonly<Partial<Record<Part['kind'], string>>> = {
  type: 'filament types',
  set: 'filament sets',
  filament: 'filaments',
  feed: 'feeds',
  obstacle: 'obstacles',
  witness: 'witnesses',
};

/** "outer", "3 filaments", "4 parts". */
export function nameOfParts(parts: readonly (Part | null)[]): string {
  const { current } = useDesign.getState();
  const [first = null] = parts;
  if (first === null) return 'the plant';
  if (parts.length === 1) return nameOfPart(current, first);
  const isOneKind = parts.every((part) => part?.kind === first.kind);
  return `${parts.length} ${(isOneKind ? PLURALS[first.kind] : undefined) ?? 'parts'}`;
}

/** Problems as one text; those of the edited field itself are said without their path, and once. */
function refusalOf(problems: readonly Problem[], parts: readonly (Part | null)[], path: Path): string | null {
  if (problems.length === 0) return null;
  const places = new Set(parts.map((part) => joinPath([...((part && pathOfPart(part)) ?? []), ...path])));
  const isSingle = parts[0]?.kind === 'filament'; // where its values stand in the file means nothing here
  const said = problems.map((problem) =>
    isSingle || places.has(problem.path) ? problem.message : formatProblem(problem),
  );
  return [...new Set(said)].join(' ');
}

/** Changes a field of all parts; answers why not, or null. */
export function changeField(
  parts: readonly (Part | null)[],
  path: Path,
  change: (old: unknown) => unknown,
  noun: string,
): string | null {
  const { files } = useDesign.getState().current;
  const one = (file: DesignFile, part: Part | null): DesignFile =>
    withField(file, part, path, change(valueAt(partValue(file, part), path)), files);
  const problems = editDesign(`${noun} of ${nameOfParts(parts)}`, (file) => parts.reduce(one, file));
  return refusalOf(problems, parts, path);
}

/** Changes the whole design; answers why not, or null. */
export function changeDesign(label: string, change: (file: DesignFile) => DesignFile): string | null {
  const problems = editDesign(label, change);
  return problems.length === 0 ? null : problems.map(formatProblem).join(' ');
}

/** Makes an edit and selects the part that came out of it; answers why not, or null. */
export function makeEdit(label: string, edit: Edited): string | null {
  if (!edit.ok) return edit.reason;
  const refusal = changeDesign(label, () => edit.file);
  if (refusal === null && edit.part) select(edit.part);
  return refusal;
}
