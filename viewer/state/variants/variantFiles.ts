/** Variants in and out: a file beside the design. */
import { fileOpen, fileSave } from 'browser-fs-access';
import { MAX_TEXT, readJson } from '../../../engine/design/readJson.ts';
import type { NamedFiles, Problem } from '../../../engine/index.ts';
import { differencesOf } from '../../format/differences.ts';
import { useDesign } from '../designStore.ts';
import { fileNameOf } from '../../format/fileName.ts';
import { refuse } from '../refusal.ts';
import { announce } from './announcement.ts';
import {
  MAX_VARIANTS,
  variantsDocument,
  variantsOf,
  type NamedSnapshot,
  type VariantsDocument,
} from './variantsDocument.ts';
import { ENDING, isVariantsFile } from './variantsFileName.ts';
import { makeVariant, useVariants, type Variant } from './variantStore.ts';

/** A new name where another variant has it: "wired" becomes "wired (2)". */
function freeName(name: string, variants: readonly { readonly name: string }[]): string {
  const isTaken = (text: string): boolean => variants.some((item) => item.name.toLowerCase() === text.toLowerCase());
  if (!isTaken(name)) return name;
  let n = 2;
  while (isTaken(`${name} (${n})`)) n++;
  return `${name} (${n})`;
}

const isKnown = ({ name, snapshot }: NamedSnapshot, variants: readonly Variant[]): boolean =>
  variants.some((item) => item.name === name && differencesOf(item.snapshot, snapshot).length === 0);

/** Adds variants to those that are pinned; those that are there already are left out. */
function addVariants(opened: readonly NamedSnapshot[]): readonly Problem[] {
  const { variants } = useVariants.getState();
  const fresh = opened.filter((item) => !isKnown(item, variants));
  if (variants.length + fresh.length > MAX_VARIANTS) {
    const message = `expected at most ${MAX_VARIANTS} variants in all; found ${variants.length} pinned and ${fresh.length} in the file. Delete some first.`;
    return [{ path: 'variants', message }];
  }
  const all = [...variants];
  for (const { name, snapshot } of fresh) all.push(makeVariant(freeName(name, all), snapshot));
  useVariants.setState({ variants: all });
  announce(fresh.length === 1 ? 'One variant added.' : `${fresh.length} variants added.`);
  return [];
}

/** Opens the text of a variants file; answers its problems, and then has changed nothing. */
export function openVariantsText(text: string, files: NamedFiles): readonly Problem[] {
  const read = readJson(text);
  if (!read.ok) return read.problems;
  const opened = variantsOf(read.value, files);
  return opened.ok ? addVariants(opened.variants) : opened.problems;
}

const baseName = (name: string): string => name.replace(/^.*[\\/]/, '');

/** Opens variants files among those that were chosen or dropped, with the other files at hand; shows what is wrong. */
export async function openVariantsFiles(files: readonly File[]): Promise<void> {
  const atHand = new Map(useDesign.getState().current.files);
  for (const file of files.filter((item) => !isVariantsFile(item)))
    atHand.set(baseName(file.name), new Uint8Array(await file.arrayBuffer()));
  for (const file of files.filter(isVariantsFile)) {
    const problems = openVariantsText(await file.text(), atHand);
    if (problems.length > 0) refuse(`“${file.name}” cannot be opened`, problems);
  }
}

const isClosed = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';

/** Lets the user choose a variants file. */
export async function chooseVariants(): Promise<void> {
  try {
    const files = await fileOpen({
      multiple: true,
      description: 'Variants, and the files that they name',
      mimeTypes: ['application/json', 'text/csv', 'model/stl'],
      extensions: ['.json', '.csv', '.stl'],
    });
    if (files.some(isVariantsFile)) await openVariantsFiles(files);
    else {
      const found = files.map(({ name }) => name).join(', ');
      refuse('There are no variants to open', [
        { path: '', message: `expected a file that ends in ${ENDING}; found ${found}` },
      ]);
    }
  } catch (error) {
    if (!isClosed(error)) refuse('The variants cannot be opened', [{ path: '', message: String(error) }]);
  }
}

/** The text of the variants file; files are left out of one that would grow too long to be opened again. */
export function variantsText(variants: readonly NamedSnapshot[]): {
  readonly text: string;
  readonly leftOut: string[];
} {
  const write = (document: VariantsDocument): string => `${JSON.stringify(document, null, 2)}\n`;
  const whole = write(variantsDocument(variants));
  if (whole.length <= MAX_TEXT) return { text: whole, leftOut: [] };
  const names = new Set(variants.flatMap(({ snapshot }) => [...snapshot.files.keys()]));
  return { text: write(variantsDocument(variants, false)), leftOut: [...names] };
}

/** Saves the variants beside the design, as "<name>.variants.json". */
export async function saveVariants(): Promise<void> {
  const fileName = fileNameOf(useDesign.getState().current.file.name).replace(/\.json$/, ENDING);
  const { text, leftOut } = variantsText(useVariants.getState().variants);
  try {
    const blob = new Blob([text], { type: 'application/json' });
    const handle = await fileSave(blob, { fileName, extensions: ['.json'], description: 'Variants' });
    const together =
      leftOut.length > 0 ? ` Open ${leftOut.join(', ')} together with it: too large to be kept inside.` : '';
    announce(`Variants saved as ${handle?.name ?? fileName}.${together}`);
    if (together) refuse('The variants are saved without some files', [{ path: '', message: together.trim() }]);
  } catch (error) {
    if (!isClosed(error)) refuse('The variants cannot be saved', [{ path: '', message: String(error) }]);
  }
}
