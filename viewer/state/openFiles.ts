/** Opening designs: presets, chosen files, dropped files. */
import { namedFiles, openPlant, openPlantFile, type NamedFiles } from '../../engine/index.ts';
import { useDesign } from './designStore.ts';
import { adopt } from './editDesign.ts';
import { dismissRefusal, refuse, useRefusal } from './refusal.ts';
import { isVariantsFile } from './variants/variantsFileName.ts';
import { presets } from '../../presets/index.ts';

/** A larger text is not a design. */
const MAX_DESIGN_BYTES = 50e6;

type Bytes = Uint8Array<ArrayBuffer>;
interface Chosen {
  readonly name: string;
  readonly bytes: Bytes;
}

/** The design whose other files are still to come. */
let pending: Chosen | null = null;

/** Opens a preset. */
export function choosePreset(id: string): void {
  const preset = presets.find((item) => item.id === id);
  if (!preset) return;
  const opened = openPlantFile(preset.file);
  if (!opened.ok) {
    refuse(`The preset “${preset.file.name}” cannot be opened`, opened.problems);
    return;
  }
  dismissRefusal();
  adopt({ file: opened.file, files: new Map(), plant: opened.plant, presetId: id }, `change to ${opened.file.name}`);
}

const isDesign = ({ name }: { readonly name: string }): boolean => /\.json$/i.test(name);
const baseName = (name: string): string => name.replace(/^.*[\\/]/, '').toLowerCase();

/** Names that a design's text refers to; none if it is not even JSON. */
function namesIn(text: string): string[] {
  try {
    return namedFiles(JSON.parse(text));
  } catch {
    return [];
  }
}

/** Finds for each name the file of that name, in any folder and case. */
function matchFiles(names: readonly string[], chosen: readonly Chosen[], known: NamedFiles): Map<string, Bytes> {
  const matched = new Map<string, Bytes>();
  for (const name of names) {
    const bytes = chosen.find((file) => baseName(file.name) === baseName(name))?.bytes ?? known.get(name);
    if (bytes) matched.set(name, bytes);
  }
  return matched;
}

function openDesign(design: Chosen, others: readonly Chosen[]): void {
  const text = new TextDecoder().decode(design.bytes);
  const names = namesIn(text);
  const files = matchFiles(names, others, new Map());
  const opened = openPlant(text, files);
  if (!opened.ok) {
    const missing = names.filter((name) => !files.has(name));
    pending = missing.length > 0 ? design : null;
    refuse(`“${design.name}” cannot be opened`, opened.problems, missing);
    return;
  }
  dismissRefusal();
  adopt({ file: opened.file, files, plant: opened.plant, presetId: null }, `open ${design.name}`);
}

/** Files without a design: they belong to the design that waits for them, or replace files of the current one. */
function openCompanions(others: readonly Chosen[]): void {
  // only while its refusal is on the page
  if (pending && (useRefusal.getState().refusal?.missing.length ?? 0) > 0) {
    openDesign(pending, others);
    return;
  }
  const { current } = useDesign.getState();
  const names = namedFiles(current.file);
  const unknown = others.filter(({ name }) => !names.some((known) => baseName(known) === baseName(name)));
  if (unknown.length > 0) {
    const message = `expected a design (.json) among the files, or files that the design names; found ${unknown.map(({ name }) => name).join(', ')}`;
    refuse('There is no design to open', [{ path: '', message }]);
    return;
  }
  const files = matchFiles(names, others, current.files);
  const opened = openPlantFile(current.file, files);
  if (!opened.ok) {
    refuse('The files do not fit the design', opened.problems);
    return;
  }
  dismissRefusal();
  adopt({ ...current, files, plant: opened.plant }, `replace ${others.map(({ name }) => name).join(', ')}`);
}

/** Opens the documents of variants among files; answers what is left to open, which needs a design. */
async function withoutVariants(files: readonly File[]): Promise<readonly File[]> {
  if (!files.some(isVariantsFile)) return files;
  try {
    // only those who have such files need what opens them
    const { openVariantsFiles } = await import('./variants/variantFiles.ts');
    await openVariantsFiles(files);
  } catch (error) {
    refuse('The variants cannot be opened', [{ path: '', message: String(error) }]);
  }
  const others = files.filter((file) => !isVariantsFile(file));
  return others.some(isDesign) ? others : [];
}

/** Opens files that the user has chosen or dropped: a design, the files that it names, or both. */
export async function openFiles(given: readonly File[]): Promise<void> {
  const files = await withoutVariants(given);
  const designs = files.filter(isDesign);
  const [first] = designs;
  if (files.length === 0) return;
  if (designs.length > 1) {
    const message = `expected one design (.json) at a time; found ${designs.map(({ name }) => name).join(', ')}`;
    refuse('More than one design', [{ path: '', message }]);
    return;
  }
  if (first && first.size > MAX_DESIGN_BYTES) {
    const message = `expected a design of at most ${MAX_DESIGN_BYTES / 1e6} MB; found ${Math.round(first.size / 1e6)} MB`;
    refuse(`“${first.name}” cannot be opened`, [{ path: '', message }]);
    return;
  }
  try {
    const chosen = await Promise.all(
      files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
    );
    const design = chosen.find(isDesign);
    const others = chosen.filter((file) => !isDesign(file));
    if (design) openDesign(design, others);
    else openCompanions(others);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    refuse('The files cannot be read', [{ path: '', message }]);
  }
}
