/** Variants as a document of their own: whole there and back, or refused with every problem. */
import { describe, expect, test } from 'vitest';
import { openPlantFile, type NamedFiles } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { differencesOf } from '../../viewer/format/differences.ts';
import type { Snapshot } from '../../viewer/state/designStore.ts';
import { variantsDocument, variantsOf, type NamedSnapshot } from '../../viewer/state/variants/variantsDocument.ts';
import { editedDesign } from '../engine/design/baseDesign.ts';

const TABLE = 'name,x,y,z\n,m,m,m\na,0.9,0.1,1.1\n';
const WITH_FILE = editedDesign({ 'filaments[3].filaments': undefined, 'filaments[3].file': 'list.csv' });

function snapshotOf(value: unknown, files: NamedFiles = new Map()): Snapshot {
  const opened = openPlantFile(value, files);
  if (!opened.ok) throw new Error(`expected a sound design; found ${JSON.stringify(opened.problems)}`);
  return { file: opened.file, files, plant: opened.plant, presetId: null };
}

const withTable = (name: string, text: string): NamedSnapshot => ({
  name,
  snapshot: snapshotOf(WITH_FILE, new Map([['list.csv', new TextEncoder().encode(text)]])),
});
const plain: readonly NamedSnapshot[] = presets
  .slice(0, 3)
  .map(({ file }) => ({ name: file.name, snapshot: snapshotOf(file) }));

/** Through text, as a file goes. */
const reread = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

function problemsOf(json: unknown): string[] {
  const opened = variantsOf(json);
  if (opened.ok) throw new Error('expected the document to be refused');
  return opened.problems.map(({ path, message }) => `${path}: ${message}`);
}

const entry = (name: string, design: unknown = presets[0]?.file): object => ({ name, design });
const document = (variants: unknown, more: object = {}): unknown =>
  reread({ format: 'evenfall variants', version: 1, variants, ...more });

describe('a document of variants', () => {
  test('gives back what it was made of', () => {
    const opened = variantsOf(reread(variantsDocument(plain)));
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    expect(opened.variants.map(({ name }) => name)).toEqual(plain.map(({ name }) => name));
    opened.variants.forEach(({ snapshot }, i) => {
      expect(snapshot.file).toEqual(plain[i]?.snapshot.file);
      expect(differencesOf(plain[i]!.snapshot, snapshot)).toEqual([]);
    });
  });

  test('keeps the files that designs name, each content once', () => {
    const variants = [withTable('a', TABLE), withTable('b', TABLE), withTable('c', TABLE.replace('0.9', '0.8'))];
    const made = variantsDocument(variants);
    expect(Object.keys(made.contents ?? {})).toEqual(['1', '2']);
    const opened = variantsOf(reread(made));
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    opened.variants.forEach(({ snapshot }, i) => {
      expect(snapshot.files).toEqual(variants[i]?.snapshot.files);
      expect(snapshot.plant).toEqual(variants[i]?.snapshot.plant);
    });
  });

  test('takes from the files at hand what it does not hold', () => {
    const bare = reread(variantsDocument([withTable('a', TABLE)], false));
    expect(problemsOf(bare)).toEqual(['variants[0].design.filaments[3].file: the file "list.csv" is not there']);
    const atHand: NamedFiles = new Map([
      ['list.csv', new TextEncoder().encode(TABLE)],
      ['other.csv', new Uint8Array(3)],
    ]);
    const opened = variantsOf(bare, atHand);
    expect(opened.ok && [...opened.variants[0]!.snapshot.files.keys()]).toEqual(['list.csv']);
  });

  test('holds none or twelve', () => {
    expect(variantsOf(document([]))).toEqual({ ok: true, variants: [] });
    const many = (count: number): object[] => Array.from({ length: count }, (_, i) => entry(`v${i}`));
    expect(variantsOf(document(many(12))).ok).toBe(true);
    expect(problemsOf(document(many(13)))).toEqual(['variants: expected a list of at most 12 variants; found 13']);
  });

  test.each<[string, unknown, string[]]>([
    ['no object', 5, [': expected a document of variants; found 5']],
    ['a list', [], [': expected a document of variants; found []']],
    ['a design', presets[0]?.file, ['format: expected "evenfall variants"; found "evenfall"']],
    ['another version', document([], { version: 2 }), ['version: expected version 1; found 2']],
    ['no variants', document(undefined), ['variants: expected a list of variants; found nothing']],
    ['an unknown key', document([], { variant: [] }), [': unknown key "variant": did you mean "variants"?']],
    ['a variant without a name', document([{ design: presets[0]?.file }]), ['variants[0].name: expected a name']],
    ['an empty name', document([entry(' ')]), ['variants[0].name: expected a name']],
    ['a name that is too long', document([entry('x'.repeat(81))]), ['variants[0].name: expected a name']],
    [
      'a name used twice',
      document([entry('A'), entry('a')]),
      ['variants[1].name: the name "a" is taken by variants[0]'],
    ],
    [
      'no design',
      document([{ name: 'A' }]),
      ['variants[0].design: expected a design, an object in braces; found nothing'],
    ],
    ['a text for a variant', document(['A']), ['variants[0]: expected a variant; found "A"']],
    [
      'a content that is not base64',
      document([], { contents: { 1: 'a*' } }),
      ['contents["1"]: expected base64 text; found "a*"'],
    ],
    [
      'a file without its content',
      document([{ ...entry('A'), files: { 'list.csv': '7' } }]),
      ['variants[0].files["list.csv"]: expected a key of "contents"; found "7"'],
    ],
    [
      'faults in the document and in two designs, all at once',
      document([entry('A', editedDesign({ 'film.target': '1 kg' })), entry('', editedDesign({ 'tank.depth': 2 }))]),
      [
        'variants[1].name: expected a name',
        'variants[0].design.film.target: expected a length',
        'variants[1].design.tank.depth: expected a length',
      ],
    ],
  ])('refuses %s', (_name, json, sentences) => {
    const problems = problemsOf(json);
    for (const sentence of sentences) expect(problems).toContainEqual(expect.stringContaining(sentence));
  });

  test('never opens a part of itself', () => {
    const opened = variantsOf(document([entry('good'), entry('bad', {})]));
    expect(Object.keys(opened)).toEqual(['ok', 'problems']);
  });
});
