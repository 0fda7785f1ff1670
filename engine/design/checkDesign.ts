/** Checks a design part by part, so that one broken part hides nothing wrong in another. */
import { z } from 'zod';
import {
  designSchema,
  type Design,
  type FilamentSetDesign,
  type FilamentTypeDesign,
  type MirrorDesign,
  type ObstacleDesign,
  type TankDesign,
  type WitnessDesign,
} from './designSchema.ts';
import { MAX_TABLE } from './filamentSchema.ts';
import { readFilamentTable } from './filamentTable.ts';
import { joinPath, type Problem } from './problem.ts';
import { quoteValue } from './quantity.ts';

/** The parts of a design that are sound in themselves; a broken one is undefined and keeps its place. */
export interface SoundParts {
  readonly mirror: MirrorDesign | undefined;
  readonly tank: TankDesign | undefined;
  readonly filamentTypes: ReadonlyMap<string, FilamentTypeDesign | undefined>;
  readonly filaments: readonly (FilamentSetDesign | undefined)[];
  readonly obstacles: readonly (ObstacleDesign | undefined)[];
  readonly witnesses: readonly (WitnessDesign | undefined)[];
}

export interface CheckedDesign {
  readonly problems: readonly Problem[];
  readonly parts: SoundParts;
  /** present if there are no problems */
  readonly design: Design | undefined;
}

/** Text or bytes of the files that a design names, by that name. */
export type NamedFiles = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

const shape = designSchema.shape;
const typeSchema = shape.filamentTypes.valueType;
const setSchema = shape.filaments.element;
const obstacleSchema = shape.obstacles.unwrap().element;
const witnessSchema = shape.witnesses.unwrap().element;

type Issue = z.core.$ZodIssue;

/** Issues as problems; of a choice, the faults within the form that the user evidently meant. */
function problemsOf(issues: readonly Issue[], place: readonly PropertyKey[] = []): Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const path = [...place, ...issue.path];
    const meant = issue.code === 'invalid_union' ? issue.errors.find(isRightKind) : undefined;
    if (meant) return problemsOf(meant, path);
    return issue.message
      .split('; unknown key')
      .map((part, i) => ({ path: joinPath(path), message: i === 0 ? part : `unknown key${part}` }));
  });
}

/** Whether a value had the kind that one form of a choice takes, so that only its content is wrong. */
function isRightKind(issues: readonly Issue[]): boolean {
  return issues.every(({ path, code }) => path.length > 0 || (code !== 'invalid_type' && code !== 'invalid_value'));
}

function sound<T>(schema: z.ZodType<T>, value: unknown): T | undefined {
  const result = schema.safeParse(value);
  return result.success ? result.data : undefined;
}

function soundList<T>(schema: z.ZodType<T>, value: unknown): (T | undefined)[] {
  return Array.isArray(value) ? value.slice(0, 5000).map((item) => sound(schema, item)) : [];
}

function soundRecord<T>(schema: z.ZodType<T>, value: unknown): Map<string, T | undefined> {
  const entries = typeof value === 'object' && value !== null ? Object.entries(value) : [];
  return new Map(entries.map(([key, item]) => [key, sound(schema, item)]));
}

/** Puts the filaments of a set's CSV text or file in their place; they stay undefined if it cannot be read. */
function withTable(set: FilamentSetDesign, path: string, files: NamedFiles, problems: Problem[]): FilamentSetDesign {
  if (set.arrangement !== 'list') return set;
  const given = (['filaments', 'csv', 'file'] as const).filter((key) => set[key] !== undefined);
  if (given.length !== 1) {
    const found = given.length === 0 ? 'none' : given.map((key) => `"${key}"`).join(' and ');
    problems.push({ path, message: `expected one of "filaments", "csv" or "file"; found ${found}` });
    return set;
  }
  if (set.filaments) return set;
  const text = set.csv ?? readTable(set.file ?? '', files);
  const { filaments, messages } = typeof text === 'string' ? readFilamentTable(text) : { messages: [text.message] };
  for (const message of messages) problems.push({ path: `${path}.${given[0]}`, message });
  return filaments && messages.length === 0 ? { ...set, filaments: [...filaments] } : set;
}

/** The text of a CSV file, or why there is none. */
function readTable(name: string, files: NamedFiles): string | { readonly message: string } {
  const bytes = files.get(name);
  if (!bytes) return { message: `the file ${quoteValue(name)} is not there` };
  if (bytes.length <= MAX_TABLE) return decodeText(bytes);
  const [most, found] = [MAX_TABLE, bytes.length].map((count) => (count / 1e6).toFixed(1));
  return { message: `expected a CSV file of at most ${most} MB; found ${found} MB` };
}

/** Bytes as UTF-8 text; where they are not UTF-8, one character a byte. */
function decodeText(bytes: Uint8Array): string {
  let escaped = '';
  let plain = '';
  for (const byte of bytes) {
    plain += String.fromCharCode(byte);
    escaped += byte < 0x80 && byte !== 0x25 ? String.fromCharCode(byte) : `%${byte.toString(16).padStart(2, '0')}`;
  }
  try {
    return decodeURIComponent(escaped);
  } catch {
    return plain;
  }
}

/** Checks the shape of a whole design: every field of every part, all problems at once. */
export function checkDesign(file: Readonly<Record<string, unknown>>, files: NamedFiles): CheckedDesign {
  const result = designSchema.safeParse(file);
  const problems = result.success ? [] : problemsOf(result.error.issues);
  const sets = result.success ? result.data.filaments : soundList(setSchema, file['filaments']);
  const filaments = sets.map((set, i) => set && withTable(set, `filaments[${i}]`, files, problems));
  const parts: SoundParts = {
    mirror: sound(shape.mirror, file['mirror']),
    tank: sound(shape.tank, file['tank']),
    filamentTypes: soundRecord(typeSchema, file['filamentTypes']),
    filaments,
    obstacles: soundList(obstacleSchema, file['obstacles']),
    witnesses: soundList(witnessSchema, file['witnesses']),
  };
  const design =
    result.success && problems.length === 0
      ? { ...result.data, filaments: filaments as FilamentSetDesign[] }
      : undefined;
  return { problems, parts, design };
}

/** Names of the files that a design refers to: filament lists and meshes. */
export function namedFiles(file: unknown): string[] {
  const names: string[] = [];
  const lists =
    typeof file === 'object' && file !== null
      ? [(file as { filaments?: unknown }).filaments, (file as { obstacles?: unknown }).obstacles]
      : [];
  for (const item of lists.flatMap((list) => (Array.isArray(list) ? (list as unknown[]) : []))) {
    const name = typeof item === 'object' && item !== null ? (item as { file?: unknown }).file : undefined;
    if (typeof name === 'string') names.push(name);
  }
  return names;
}
