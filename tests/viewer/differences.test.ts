/** What differs between two designs: nothing invented, nothing silent. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designSchema } from '../../engine/design/designSchema.ts';
import { DIMENSIONS } from '../../engine/design/quantity.ts';
import {
  formatQuantity,
  openPlantFile,
  parseQuantity,
  type DimensionName,
  type NamedFiles,
} from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { differencesOf, type Comparable } from '../../viewer/format/differences.ts';
import { baseDesign, editedDesign, type Edits } from '../engine/design/baseDesign.ts';
import { validDesign } from '../engine/design/validDesigns.ts';

type Json = Record<string, unknown>;
type Path = readonly (string | number)[];

const SEED = 20260;

function tryOpen(value: unknown, files: NamedFiles = new Map()): Comparable | null {
  const opened = openPlantFile(value, files);
  return opened.ok ? { file: opened.file, files, plant: opened.plant } : null;
}

function open(value: unknown, files?: NamedFiles): Comparable {
  const opened = tryOpen(value, files);
  if (!opened) throw new Error(`expected a sound design; found ${JSON.stringify(value).slice(0, 200)}`);
  return opened;
}

const textsOf = (a: Comparable, b: Comparable): string[] => differencesOf(a, b).map(({ text }) => text);
const edited = (edits: Edits): string[] => textsOf(open(baseDesign()), open(editedDesign(edits)));

/** Paths of all values that hold no others. */
function leavesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, item]) =>
    leavesOf(item, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((inner, key) => (inner as Json)[key], value);
}

/** A copy with one value replaced, or taken out if it is undefined. */
function replaced(value: unknown, path: Path, next: unknown): Json {
  const copy = structuredClone(value) as Json;
  const parent = valueAt(copy, path.slice(0, -1)) as Json;
  const last = path.at(-1) ?? '';
  if (next === undefined && !Array.isArray(parent)) Reflect.deleteProperty(parent, last);
  else parent[last] = next;
  return copy;
}

const LEADING_NUMBER = /^[+-]?\d*\.?\d+(?:e[+-]?\d+)?/i;
const CHOICES = [
  'Ar',
  'up',
  'hexagon',
  'radial',
  'inward',
  'half-space',
  'cone',
  'isotropic',
  'toward mirror',
  'flat',
  'boat',
  'hairpin',
];

/** Other values for a leaf; whether they are allowed, the engine judges. */
function otherValues(leaf: unknown): readonly unknown[] {
  if (typeof leaf === 'number') return [leaf + 1, leaf - 1, leaf * 0.99, undefined];
  if (typeof leaf === 'boolean') return [!leaf, undefined];
  const text = String(leaf);
  const scaled = [1.01, 0.99].map((factor) =>
    text.replace(LEADING_NUMBER, (digits) => String(Number(digits) === 0 ? factor - 1 : Number(digits) * factor)),
  );
  return [...scaled, ...CHOICES, `${text} too`, undefined].filter((value) => value !== text);
}

/** Names that a line about this place must hold one of. */
function namesFor(design: Json, [section = '', key = '', ...deeper]: Path): string[] {
  if (section === 'filamentTypes') return [String(key)];
  const item: unknown = typeof key === 'number' ? (design[section] as Json[])[key] : undefined;
  if (!item) return ['mirror', 'tank', 'vacuum', 'film'].includes(String(section)) ? [String(section)] : ['design'];
  const { name, filaments } = item as { name: string; filaments?: { name?: string }[] };
  const own = deeper[0] === 'filaments' ? filaments?.[Number(deeper[1])]?.name : undefined;
  return own === undefined ? [name] : [name, `filament ${own}`];
}

/** Numbers smaller than this may count as zero: below 1e-305 they lose their digits, and a percent of this is more. */
const VANISHING = 1e-300;
const meaningOf = ({ file }: Comparable): string =>
  JSON.stringify(designSchema.parse(file), (_, value: unknown) =>
    typeof value === 'number' && Math.abs(value) < VANISHING ? 0 : value,
  );

/** Whether two sound designs mean different things. */
const differ = (a: Comparable, b: Comparable): boolean => meaningOf(a) !== meaningOf(b);

/** Changes one leaf in every allowed way; each must be told, and must name its part. Returns how many were. */
function checkLeaf(design: Json, path: Path): number {
  const before = open(design);
  let told = 0;
  for (const next of otherValues(valueAt(design, path))) {
    const after = tryOpen(replaced(design, path, next));
    if (!after || !differ(before, after)) continue;
    told++;
    for (const [a, b] of [
      [before, after],
      [after, before],
    ] as const) {
      const texts = textsOf(a, b);
      const place = `${path.join('.')} = ${JSON.stringify(next)}: ${texts.join(' | ')}`;
      expect(texts.length, place).toBeGreaterThan(0);
      const names = [before, after].flatMap(({ file }) => namesFor(file, path));
      expect(
        names.some((name) => texts.some((text) => text.includes(name))),
        place,
      ).toBe(true);
    }
  }
  return told;
}

/** The same design with each quantity in the n-th other unit of its kind. */
function rewritten(value: unknown, n: number): unknown {
  if (Array.isArray(value)) return value.map((item) => rewritten(item, n));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, rewritten(item, n)]));
  if (typeof value !== 'string') return value;
  for (const dimension of Object.keys(DIMENSIONS) as DimensionName[]) {
    const parsed = parseQuantity(value, dimension);
    const units = Object.keys(DIMENSIONS[dimension].units);
    if (parsed.ok) return formatQuantity(parsed.value, dimension, units[n % units.length] ?? parsed.unit);
  }
  return value;
}

describe('differences of two designs', () => {
  test('a design does not differ from itself', () => {
    for (const { file } of presets) expect(differencesOf(open(file), open(structuredClone(file)))).toEqual([]);
    fc.assert(
      fc.property(validDesign, (design) => {
        expect(differencesOf(open(design), open(design))).toEqual([]);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });

  test('every change of one value of a design with everything in it is told and names its part', () => {
    const leaves = leavesOf(baseDesign());
    expect(leaves.length).toBeGreaterThan(120);
    const untold = leaves.filter((path) => checkLeaf(baseDesign(), path) === 0).map((path) => String(path.at(-1)));
    // the words that set the form of their part, and values that others are bound to
    const bound = ['format', 'version', 'arrangement', 'shape', 'law', 'removes', 'power', 'loops'];
    // the last component of a normal [0, 0, 1] only scales it
    expect([...new Set(untold)].sort()).toEqual([...bound, '2'].sort());
  });

  test('every change of one value of a random design is told and names its part', () => {
    fc.assert(
      fc.property(validDesign, fc.nat(), (design, pick) => {
        const leaves = leavesOf(design);
        checkLeaf(design, leaves[pick % leaves.length] ?? []);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  test('the same quantities in other units are no difference', () => {
    const mostUnits = Math.max(...Object.values(DIMENSIONS).map(({ units }) => Object.keys(units).length));
    for (let n = 0; n < mostUnits; n++) {
      expect(edited({})).toEqual([]);
      expect(textsOf(open(baseDesign()), open(rewritten(baseDesign(), n))), `unit ${n}`).toEqual([]);
    }
    fc.assert(
      fc.property(validDesign, fc.nat({ max: mostUnits }), (design, n) => {
        const other = tryOpen(rewritten(design, n));
        if (other) expect(textsOf(open(design), other)).toEqual([]);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test('a default written out is no difference', () => {
    const spare = { vacuum: undefined, film: undefined, 'filaments[0].exceptions': undefined };
    const full = { 'filaments[0].startAngle': '0 deg', 'filaments[0].axis': 'tangential', 'film.density': '2.7 g/cm3' };
    expect(textsOf(open(editedDesign({ ...spare })), open(editedDesign({ 'filaments[0].exceptions': [] })))).toEqual(
      [],
    );
    expect(edited(full)).toEqual([]);
  });

  test.each<[string, Edits, string[]]>([
    ['a diameter', { 'filaments[0].diameter': '2.3 m' }, ['ring outer: diameter 2.4 m → 2.3 m']],
    ['another unit too', { 'filaments[0].diameter': '90 in' }, ['ring outer: diameter 2.4 m → 90 in (2.286 m)']],
    ['the tolerance', { 'film.tolerance': '5 %' }, ['film: tolerance ±10 % → ±5 %']],
    ['a charge of its own', { 'filaments[0].charge': '0.25 g' }, ['ring outer: charge 402 mg by its type → 0.25 g']],
    [
      'a clip, which changes the charge',
      { 'filamentTypes.coil.clipMass': '60 mg' },
      ['filament type coil: clip mass 67 mg → 60 mg', 'ring outer: charge 402 mg by its type → 360 mg by its type'],
    ],
    [
      'filaments out of use, together',
      {
        'filaments[0].exceptions': [2, 7, 9].map((filament) => ({
          filament,
          charge: filament === 2 ? '0.5 g' : undefined,
          outOfUse: true,
        })),
      },
      ['filaments outer 2, 7 and 9 out of use'],
    ],
    [
      'an own charge taken away',
      { 'filaments[0].exceptions': [] },
      ['filament outer 2: charge 500 mg → that of its set, 402 mg'],
    ],
    [
      'an obstacle removed',
      { obstacles: [] },
      ['obstacle plug removed', 'obstacle beam removed', 'obstacle baffle removed'],
    ],
    ['an obstacle renamed', { 'obstacles[0].name': 'stopper' }, ['obstacle plug renamed to stopper']],
    ['a set renamed', { 'filaments[0].name': 'rim' }, ['ring outer renamed to rim']],
    ['a word', { 'vacuum.gas': 'Ar' }, ['vacuum: gas air → Ar']],
    [
      'a part of its own',
      { 'filamentTypes.boat.shield': undefined },
      ['filament type boat: shield removed (removes cone, direction outward, half angle 30 deg)'],
    ],
    [
      'a list by its index',
      { 'filamentTypes.hairpin.path[1][2]': '-25 mm' },
      ['filament type hairpin: wire path 2 (0 mm, 0 mm, -20 mm) → (0 mm, 0 mm, -25 mm)'],
    ],
    [
      'a term by its power',
      { 'mirror.aspheric[0].coefficient': '2e-6 m^-3' },
      ['mirror: aspheric term of power 4 coefficient 1e-6 m^-3 → 2e-6 m^-3'],
    ],
    [
      'a listed filament',
      { 'filaments[3].filaments[1].position[0]': '-0.8 m' },
      ['filament b: position (-0.9 m, 0.1 m, 1.1 m) → (-0.8 m, 0.1 m, 1.1 m)'],
    ],
    [
      'another emission law, with what belongs to it',
      { 'filamentTypes.boat.emission': { law: 'isotropic' } },
      [
        'filament type boat: emission law cosine power → isotropic',
        'filament type boat: emission power 1 → not given',
        'filament type boat: emission tilt 10 deg → not given',
      ],
    ],
    [
      'another shape of the same name',
      { 'obstacles[1]': { shape: 'sphere', name: 'beam', center: ['0 m', '0 m', '1.5 m'], diameter: '0.2 m' } },
      [
        'obstacle beam: shape box → sphere',
        'obstacle beam: size (1 m, 0.1 m, 0.1 m) → not given',
        'obstacle beam: diameter not given → 0.2 m',
      ],
    ],
    [
      'a list as a table',
      {
        'filaments[3].filaments': undefined,
        'filaments[3].csv': 'name,x,y,z,charge,feed\n,m,m,m,g,\na,0.9,0.1,1.1,0.2,spare\nb,-0.9,0.1,1.1,0.3,\n',
      },
      [
        'list extra: filaments listed in the design → as CSV text',
        'filament a: axis radial → that of its set',
        'filament b: charge that of its set, 400 mg → 300 mg',
      ],
    ],
    [
      'a part that nobody gave words',
      { 'mirror.cornerAngle': '3 deg' },
      ['mirror: corner angle (clock angle of one corner of a hexagon) 0 deg → 3 deg'],
    ],
  ])('says %s', (_name, edits, texts) => {
    expect(edited(edits)).toEqual(texts);
  });

  test('says what an added ring is', () => {
    const [first, second] = presets.filter(({ id }) => id.startsWith('tarn-hill')).map(({ file }) => open(file));
    expect(textsOf(first!, second!)).toContain(
      'added ring inner: 12 filaments at 1 m, height 0.9 m, type four-loop, charge 250 mg each',
    );
    expect(textsOf(second!, first!)).toContain('ring inner removed');
  });

  test('a renamed filament type is one difference, not one for each set', () => {
    const design = baseDesign();
    const { coil, ...others } = design['filamentTypes'] as Json;
    const sets = (design['filaments'] as Json[]).map((set) =>
      set['type'] === 'coil' ? { ...set, type: 'helix' } : set,
    );
    const renamed = open({ ...design, filamentTypes: { ...others, helix: coil }, filaments: sets });
    expect(textsOf(open(design), renamed)).toEqual(['filament type coil renamed to helix']);
  });

  test('another order is told', () => {
    const design = baseDesign();
    const turned = { ...design, filaments: (design['filaments'] as Json[]).toReversed() };
    expect(textsOf(open(design), open(turned))).toEqual([
      'filament sets: another order, outer, row, field, extra → extra, field, row, outer',
    ]);
  });

  test('the content of files beside the design is compared', () => {
    const design = editedDesign({ 'filaments[3].filaments': undefined, 'filaments[3].file': 'list.csv' });
    const table = (x: string): NamedFiles =>
      new Map([['list.csv', new TextEncoder().encode(`name,x,y,z\n,m,m,m\na,${x},0.1,1.1\n`)]]);
    expect(textsOf(open(design, table('0.9')), open(design, table('0.90')))).toEqual([]);
    expect(textsOf(open(design, table('0.9')), open(design, table('0.8')))).toEqual([
      'filament a: position (0.9 m, 0.1 m, 1.1 m) → (0.8 m, 0.1 m, 1.1 m)',
    ]);
  });
});
