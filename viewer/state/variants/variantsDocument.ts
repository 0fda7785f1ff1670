/**
 * Variants as a document of their own beside the design, which stays one plant and one shot.
 *
 *     { "format": "evenfall variants", "version": 1, "variants": [{ "name": …, "design": … }] }
 *
 * Files that the designs name (filament lists, meshes) are kept in "contents" as base64, each once;
 * a variant's "files" tells which of them goes by which name.
 */
import { z } from 'zod';
import { content, label, list, section } from '../../../engine/design/fields.ts';
import { joinPath, shortened } from '../../../engine/design/problem.ts';
import { quoteValue } from '../../../engine/design/quantity.ts';
import { namedFiles, openPlantFile, type DesignFile, type NamedFiles, type Problem } from '../../../engine/index.ts';
import type { Snapshot } from '../designStore.ts';
import { fromBase64, toBase64 } from './base64.ts';

const VARIANTS_FORMAT = 'evenfall variants';
const VERSION = 1;
export const MAX_VARIANTS = 12;

const MAX_KEY = 400;
const MAX_CONTENT = 50e6;

export interface NamedSnapshot {
  readonly name: string;
  readonly snapshot: Snapshot;
}

export interface VariantsDocument {
  readonly format: typeof VARIANTS_FORMAT;
  readonly version: typeof VERSION;
  readonly variants: readonly {
    readonly name: string;
    readonly design: DesignFile;
    readonly files?: Readonly<Record<string, string>>;
  }[];
  readonly contents?: Readonly<Record<string, string>>;
}

export type OpenedVariants =
  | { readonly ok: true; readonly variants: readonly NamedSnapshot[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const documentSchema = section('a document of variants', {
  format: z.literal(VARIANTS_FORMAT, {
    error: ({ input }) => `expected "${VARIANTS_FORMAT}"; found ${quoteValue(input)}`,
  }),
  version: z.literal(VERSION, {
    error: ({ input }) => `expected version ${VERSION}; found ${quoteValue(input)}`,
  }),
  variants: list(
    'variants',
    section('a variant', {
      name: label('name of the variant'),
      design: z.unknown(),
      files: z.record(z.string(), content('a key of "contents"', MAX_KEY, 'which content a file has')).optional(),
    }),
    0,
    MAX_VARIANTS,
  ),
  contents: z.record(z.string(), content('base64 text', MAX_CONTENT, 'content of a file')).optional(),
});

/** Contents that are kept once, however many variants hold them. */
function createContents() {
  const keys = new Map<string, string>();
  const keyOf = (bytes: Uint8Array): string => {
    const text = toBase64(bytes);
    const key = keys.get(text) ?? String(keys.size + 1);
    keys.set(text, key);
    return key;
  };
  return { keyOf, all: () => Object.fromEntries([...keys].map(([text, key]) => [key, text])) };
}

/** The document of some variants, with the files that they name or without. */
export function variantsDocument(variants: readonly NamedSnapshot[], withContents = true): VariantsDocument {
  const contents = createContents();
  const entries = variants.map(({ name, snapshot: { file, files } }) => {
    if (files.size === 0 || !withContents) return { name, design: file };
    const keys = [...files].map(([fileName, bytes]) => [fileName, contents.keyOf(bytes)]);
    return { name, design: file, files: Object.fromEntries(keys) as Record<string, string> };
  });
  const all = contents.all();
  const document = { format: VARIANTS_FORMAT, version: VERSION, variants: entries } as const;
  return Object.keys(all).length > 0 ? { ...document, contents: all } : document;
}

type Json = Readonly<Record<string, unknown>>;
type Contents = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

/** A value's entries if it is a record; a broken part has none, and is reported by the schema. */
function entriesIn(value: unknown): readonly (readonly [string, unknown])[] {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.entries(value) : [];
}

const isPresent = (value: unknown): value is Json => typeof value === 'object' && value !== null;

/** The files of one variant: from the document, else from those at hand. */
function filesOf({ files }: Json, i: number, contents: Contents, atHand: NamedFiles, problems: Problem[]): NamedFiles {
  const found = new Map(atHand);
  for (const [name, key] of entriesIn(files)) {
    const bytes = typeof key === 'string' ? contents.get(key) : undefined;
    if (bytes) found.set(name, bytes);
    else if (typeof key === 'string') {
      const path = joinPath(['variants', i, 'files', name]);
      problems.push({ path, message: `expected a key of "contents"; found ${quoteValue(key)}` });
    }
  }
  return found;
}

function readContents(texts: unknown, problems: Problem[]): Contents {
  const contents = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const [key, text] of entriesIn(texts)) {
    const bytes = typeof text === 'string' ? fromBase64(text) : null;
    if (bytes) contents.set(key, bytes);
    else if (typeof text === 'string')
      problems.push({ path: joinPath(['contents', key]), message: `expected base64 text; found ${quoteValue(text)}` });
  }
  return contents;
}

/** Names that two variants share: case does not tell them apart. */
function nameProblems(entries: readonly unknown[]): Problem[] {
  const first = new Map<string, number>();
  return entries.flatMap((entry, i): Problem[] => {
    const name = isPresent(entry) ? entry['name'] : undefined;
    if (typeof name !== 'string') return [];
    const before = first.get(name.toLowerCase());
    if (before === undefined) first.set(name.toLowerCase(), i);
    const message = `the name "${name}" is taken by variants[${before}]; each needs its own`;
    return before === undefined ? [] : [{ path: `variants[${i}].name`, message }];
  });
}

/** Opens one variant; adds what is wrong with its design to the problems. */
function openEntry(entry: Json, i: number, files: NamedFiles, problems: Problem[]): NamedSnapshot | null {
  const opened = openPlantFile(entry['design'], files);
  if (!opened.ok) {
    const path = `variants[${i}].design`;
    for (const problem of opened.problems)
      problems.push({ path: problem.path ? `${path}.${problem.path}` : path, message: problem.message });
    return null;
  }
  const { file, plant } = opened;
  const names = namedFiles(file);
  const own = new Map([...files].filter(([name]) => names.includes(name)));
  return { name: String(entry['name']), snapshot: { file, files: own, plant, presetId: null } };
}

/**
 * Opens a document of variants.
 *
 * @param json as parsed; anything else is refused
 * @param atHand files for designs whose document does not hold them
 * @returns all variants, or every problem with its path; never some of them
 */
export function variantsOf(json: unknown, atHand: NamedFiles = new Map()): OpenedVariants {
  const result = documentSchema.safeParse(json);
  const problems: Problem[] = (result.error?.issues ?? []).map(({ path, message }) => ({
    path: joinPath(path),
    message,
  }));
  const { variants: list, contents: texts } = isPresent(json) ? (json as Json) : {};
  const entries = Array.isArray(list) ? (list as unknown[]).slice(0, MAX_VARIANTS) : [];
  const contents = readContents(texts, problems);
  problems.push(...nameProblems(entries));
  const variants = entries.flatMap((entry, i) => {
    if (!isPresent(entry)) return [];
    const opened = openEntry(entry, i, filesOf(entry, i, contents, atHand, problems), problems);
    return opened ? [opened] : [];
  });
  return problems.length > 0 ? { ok: false, problems: shortened(problems) } : { ok: true, variants };
}
