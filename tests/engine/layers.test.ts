import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** From the ground up: a folder may import itself and those before it. */
const HOUSES = ['engine', 'presets', 'workers', 'viewer'];
const ENGINE_FOLDERS = [
  'design',
  'geometry',
  'emission',
  'plant',
  'transport',
  'field',
  'coat',
  'gas',
  'vacuum',
  'film',
  'explain',
];

/** The files of the engine that stand on three: meshes, read and met by rays. */
const MESH_FILES = ['engine/geometry/mesh.ts', 'engine/geometry/stl.ts'];

const FORBIDDEN_IN_ENGINE = [
  ['Math.random', /\bMath\s*\.\s*random\b/],
  ['Date.now', /\bDate\s*\.\s*now\b/],
  ['new Date', /\bnew\s+Date\b/],
  ['document', /\bdocument\s*[.[]/],
  ['window', /\bwindow\s*[.[]/],
  ['any', /(?::|\bas|<)\s*any\b/],
] as const;

/** Text of each file by its path from the root. */
type Files = ReadonlyMap<string, string>;

const IMPORT =
  /^\s*(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]|^\s*import\s*['"]([^'"]+)['"]|\bimport\s*\(\s*['"]([^'"]+)['"]|\bnew\s+URL\(\s*['"]([^'"]+\.tsx?)['"]\s*,\s*import\.meta\.url/gm;

/** What a file imports, as written: statements over several lines, bare, dynamic and worker addresses. */
function importsOf(text: string): string[] {
  return [...withoutComments(text).matchAll(IMPORT)].map((match) => match.slice(1).find((name) => name) ?? '');
}

/** Whole comment lines and blocks are prose: they may say what code may not. */
function withoutComments(text: string): string {
  let inBlock = false;
  return text
    .split('\n')
    .map((line) => {
      const start = line.trimStart();
      const isProse = inBlock || start.startsWith('/*') || start.startsWith('//');
      if (inBlock || start.startsWith('/*')) inBlock = !line.includes('*/');
      return isProse ? '' : line.replace(/\s\/\/ .*$/, '');
    })
    .join('\n');
}

/** The file that a relative import means, or undefined for a package. */
function targetOf(file: string, name: string): string | undefined {
  if (!name.startsWith('.')) return undefined;
  return join(dirname(file), name.replace(/\?.*$/, '')).replaceAll('\\', '/');
}

/** Rank of a file within an ordered list of folders; index.ts on top; −1 for a folder without a place. */
function rank(folder: string | undefined, isInFolder: boolean, order: readonly string[]): number {
  return isInFolder ? order.indexOf(folder ?? '') : order.length;
}

function directionFault(from: string, to: string): string | undefined {
  const [houseFrom, folderFrom, ...deepFrom] = from.split('/');
  const [houseTo, folderTo, ...deepTo] = to.split('/');
  const [a, b] = [HOUSES.indexOf(houseFrom ?? ''), HOUSES.indexOf(houseTo ?? '')];
  if (b < 0) return `${from} imports ${to}, outside ${HOUSES.join(', ')}`;
  if (b > a) return `${from} imports upwards: ${to}`;
  if (houseFrom !== 'engine' || houseTo !== 'engine') return undefined;
  const [i, j] = [
    rank(folderFrom, deepFrom.length > 0, ENGINE_FOLDERS),
    rank(folderTo, deepTo.length > 0, ENGINE_FOLDERS),
  ];
  if (i < 0) return `${from} lies in a folder without a place in the order`;
  if (j < 0) return `${from} imports ${to}, in a folder without a place in the order`;
  return j > i ? `${from} imports upwards: ${to}` : undefined;
}

function packageFault(file: string, name: string): string | undefined {
  if (!file.startsWith('engine/') || name.startsWith('.')) return undefined;
  const isForbidden = /^(?:node:|react|three|@react-three)/.test(name);
  const isMesh = MESH_FILES.includes(file) && /^three(?:$|\/|-mesh-bvh$)/.test(name);
  return isForbidden && !isMesh ? `${file} imports ${name}` : undefined;
}

/** Import cycles, each as the files along it; found by walking depth first. */
function cyclesIn(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const done = new Set<string>();
  const cycles: string[] = [];
  const walk = (file: string, trail: readonly string[]): void => {
    const at = trail.indexOf(file);
    if (at >= 0) cycles.push([...trail.slice(at), file].join(' → '));
    if (at >= 0 || done.has(file)) return;
    for (const next of graph.get(file) ?? []) walk(next, [...trail, file]);
    done.add(file);
  };
  for (const file of graph.keys()) walk(file, []);
  return cycles;
}

/** Every breach of the architecture in a set of files, as sentences. */
function breaches(files: Files): string[] {
  const found: (string | undefined)[] = [];
  const graph = new Map<string, string[]>();
  for (const [file, text] of files) {
    const names = importsOf(text);
    const targets = names.map((name) => targetOf(file, name)).filter((target) => target !== undefined);
    graph.set(file, targets);
    found.push(
      ...targets.map((target) => directionFault(file, target)),
      ...names.map((name) => packageFault(file, name)),
    );
    if (!file.startsWith('engine/')) continue;
    const code = withoutComments(text);
    for (const [word, pattern] of FORBIDDEN_IN_ENGINE) if (pattern.test(code)) found.push(`${file} mentions ${word}`);
  }
  found.push(...cyclesIn(graph).map((cycle) => `import cycle: ${cycle}`));
  return found.filter((fault) => fault !== undefined);
}

function readHouse(house: string): [string, string][] {
  const names = readdirSync(join(ROOT, house), { recursive: true, encoding: 'utf8' });
  return names
    .filter((name) => /\.tsx?$/.test(name) && !/(?:^|[\\/])(?:node_modules|dist)[\\/]/.test(name))
    .map((name) => [
      relative(ROOT, join(ROOT, house, name)).replaceAll('\\', '/'),
      readFileSync(join(ROOT, house, name), 'utf8'),
    ]);
}

describe('the house', () => {
  const files = new Map(HOUSES.flatMap(readHouse));

  test('is read whole: the engine, and imports that resolve', () => {
    expect([...files.keys()].filter((file) => file.startsWith('engine/')).length).toBeGreaterThan(45);
    const index = importsOf(files.get('engine/index.ts') ?? '').map((name) => targetOf('engine/index.ts', name) ?? '');
    expect(index.length).toBeGreaterThan(10);
    for (const target of index) expect(files.has(target), target).toBe(true);
    const statements = [...files].reduce((sum, [, text]) => sum + (text.match(/\bfrom ['"]/g)?.length ?? 0), 0);
    const read = [...files].reduce((sum, [, text]) => sum + importsOf(text).length, 0);
    expect(read).toBeGreaterThanOrEqual(statements);
  });

  test('keeps its direction, its layers and its promises', () => {
    expect(breaches(files)).toEqual([]);
  });
});

describe('the check itself', () => {
  const caught = (files: Record<string, string>): string[] => breaches(new Map(Object.entries(files)));

  test('passes a house in order', () => {
    expect(
      caught({
        'engine/index.ts': `export { a } from './coat/a.ts';`,
        'engine/coat/a.ts': `import { b } from '../design/b.ts';\nimport { c } from './c.ts';\nimport x from 'zod';`,
        'engine/coat/c.ts': `// Math.random, document.title and : any in prose\n/**\n * new Date\n */\nconst many: number = 1;`,
        'engine/design/b.ts': ``,
        'engine/geometry/mesh.ts': `import { Ray } from 'three';\nimport { MeshBVH } from 'three-mesh-bvh';\nimport 'three/addons/x.js';`,
        'workers/w.ts': `import { a } from '../engine/index.ts';\nimport 'node:fs';\nconst now = Date.now();`,
        'viewer/v.tsx': `import {\n  w,\n} from '../workers/w.ts';\nimport { a } from '../engine/index.ts';`,
      }),
    ).toEqual([]);
  });

  test.each([
    ['engine → workers', { 'engine/coat/a.ts': `import '../../workers/w.ts';` }, 'upwards: workers/w.ts'],
    ['engine → viewer, type only', { 'engine/coat/a.ts': `import type { V } from '../../viewer/v.tsx';` }, 'upwards'],
    ['engine → presets', { 'engine/coat/a.ts': `import '../../presets/index.ts';` }, 'upwards: presets/index.ts'],
    ['workers → viewer', { 'workers/w.ts': `export * from '../viewer/v.tsx';` }, 'upwards: viewer/v.tsx'],
    ['workers → viewer, dynamic', { 'workers/w.ts': `const v = await import('../viewer/v.tsx');` }, 'upwards'],
    ['viewer → tests', { 'viewer/v.ts': `import '../tests/t.ts';` }, 'outside engine, presets, workers, viewer'],
    [
      'design → geometry',
      { 'engine/design/a.ts': `import { g } from '../geometry/g.ts';` },
      'upwards: engine/geometry',
    ],
    [
      'over several lines',
      { 'engine/plant/a.ts': `import {\n  g,\n} from '../coat/g.ts';` },
      'upwards: engine/coat/g.ts',
    ],
    ['transport → index', { 'engine/transport/a.ts': `import { g } from '../index.ts';` }, 'upwards: engine/index.ts'],
    ['an unknown folder', { 'engine/magic/a.ts': `import '../design/b.ts';` }, 'without a place in the order'],
    ['three elsewhere', { 'engine/geometry/a.ts': `import { Ray } from 'three';` }, 'imports three'],
    ['a node module', { 'engine/geometry/mesh.ts': `import 'node:fs';` }, 'imports node:fs'],
    ['react', { 'engine/coat/a.ts': `import { useState } from 'react';` }, 'imports react'],
    ['Math.random', { 'engine/coat/a.ts': `const x = Math.random();` }, 'mentions Math.random'],
    ['Date.now', { 'engine/coat/a.ts': `const x = Date.now();` }, 'mentions Date.now'],
    ['new Date', { 'engine/coat/a.ts': `const x = new Date();` }, 'mentions new Date'],
    ['document', { 'engine/coat/a.ts': `document.title = 'x';` }, 'mentions document'],
    ['window', { 'engine/coat/a.ts': `window.alert(1);` }, 'mentions window'],
    ['any', { 'engine/coat/a.ts': `const x: any = 1;` }, 'mentions any'],
    ['any by assertion', { 'engine/coat/a.ts': `const x = y as any;` }, 'mentions any'],
    ['a file that imports itself', { 'viewer/a.ts': `import './a.ts';` }, 'import cycle: viewer/a.ts → viewer/a.ts'],
    [
      'a cycle of three',
      {
        'engine/coat/a.ts': `import './b.ts';`,
        'engine/coat/b.ts': `import type { C } from './c.ts';`,
        'engine/coat/c.ts': `import './a.ts';`,
      },
      'import cycle: engine/coat/a.ts → engine/coat/b.ts → engine/coat/c.ts → engine/coat/a.ts',
    ],
  ] as [string, Record<string, string>, string][])('catches %s', (_name, files, sentence) => {
    expect(caught(files)).toContainEqual(expect.stringContaining(sentence));
  });
});
