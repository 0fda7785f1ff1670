/** The forms of the parts: read from the schema, explained everywhere, true to what was typed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DIMENSIONS } from '../../engine/design/quantity.ts';
import { openPlantFile, parseQuantity, type DesignFile } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { valueAt, withValue } from '../../viewer/state/edits/path.ts';
import type { Units } from '../../viewer/state/units.ts';
import type { Field } from '../../viewer/panels/plant/fields/field.ts';
import { FILAMENT_FIELDS, FORMS } from '../../viewer/panels/plant/fields/readSchema.ts';
import { shownText } from '../../viewer/panels/plant/fields/shownText.ts';
import { nextItem, startOf } from '../../viewer/panels/plant/fields/starts.ts';
import { typedValue } from '../../viewer/panels/plant/fields/typedValue.ts';
import { HELP, LABELS } from '../../viewer/panels/plant/fields/words.ts';
import { previewTable } from '../../viewer/panels/plant/tableFaults.ts';
import { meshExtent } from '../../viewer/panels/plant/meshExtent.ts';
import { plantKeys } from '../../viewer/panels/plant/plantKeys.ts';
import { branchesOf, treeRows } from '../../viewer/panels/plant/tree/treeRows.ts';
import { cubeStl } from '../support/stl.ts';

const SEED = 20261;
/** A shown value has six digits. */
const SHOWN = 5e-6;
const METRIC: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const INCHES: Units = { length: 'in', thickness: 'Å', mass: 'oz', pressure: 'Torr', temperature: 'degF' };

/** The fields right inside a field. */
function inside(field: Field): readonly Field[] {
  switch (field.kind) {
    case 'group':
      return field.fields;
    case 'tuple':
      return field.items;
    case 'list':
      return [field.item];
    case 'either':
      return field.options;
    case 'choice':
      return [...field.options.values()].flat();
    default:
      return [];
  }
}

const withAllInside = (field: Field): Field[] => [field, ...inside(field).flatMap(withAllInside)];
const everyField = Object.values(FORMS).flatMap(withAllInside);
/** Items of lists and alternatives have no key: they are named by what holds them. */
const keyed = everyField.filter(({ key }) => key !== '');
const sections = Object.keys(FORMS);

describe('fields of the schema', () => {
  test('every field of every section has a label and help', () => {
    const bare = keyed.filter(({ place, label, help }) => label === '' || (help === '' && !sections.includes(place)));
    expect(bare.map(({ place }) => place)).toEqual([]);
    expect(keyed.length).toBeGreaterThan(100);
  });

  test('no label or help is written for a place that is gone', () => {
    const places = new Set(keyed.flatMap(({ place, key }) => [place, key]));
    expect([...Object.keys(LABELS), ...Object.keys(HELP)].filter((place) => !places.has(place))).toEqual([]);
  });

  test('what a form adds is accepted by the schema of its place', () => {
    for (const field of everyField) {
      if (field.kind !== 'list') continue;
      const items = startOf(field) as readonly unknown[];
      expect(items.length).toBeGreaterThanOrEqual(field.min);
      expect(nextItem(field, items)).toBeDefined();
    }
    const file = withValue(presets[0]!.file as DesignFile, ['filamentTypes', 'four-loop', 'shield'], undefined);
    const list = (key: string, section: Field) =>
      inside(section).find((field) => field.key === key) as Extract<Field, { kind: 'list' }>;
    const aspheric = list('aspheric', FORMS.mirror);
    const terms = [nextItem(aspheric, []), nextItem(aspheric, [nextItem(aspheric, [])])];
    expect(openPlantFile(withValue(file, ['mirror', 'aspheric'], terms)).ok).toBe(true);
    const shield = inside(FORMS.type).find(({ key }) => key === 'shield')!;
    expect(openPlantFile(withValue(file, ['filamentTypes', 'four-loop', 'shield'], startOf(shield))).ok).toBe(true);
    const exceptions = list('exceptions', FORMS.set);
    const own = [nextItem(exceptions, []), nextItem(exceptions, [{ filament: 1 }])];
    expect(openPlantFile(withValue(file, ['filaments', 0, 'exceptions'], own)).ok).toBe(true);
  });

  test('a filament has name, position, axis, charge, feed and use', () => {
    expect(FILAMENT_FIELDS.map(({ key }) => key)).toEqual(['name', 'position', 'axis', 'charge', 'feed', 'outOfUse']);
  });

  test('forms know quantities of every dimension', () => {
    const quantities = new Set(everyField.flatMap((field) => (field.kind === 'quantity' ? field.dimension : [])));
    expect([...quantities].sort()).toEqual(Object.keys(DIMENSIONS).sort());
  });
});

describe('typed and shown values', () => {
  const number = keyed.find(({ place }) => place === 'mirror.conicConstant')!;
  const required = keyed.find(({ place }) => place === 'tank.diameter')!;

  test.each([
    ['-1', -1],
    ['0,5', 0.5],
    ['1e-3', 0.001],
    ['', undefined],
    ['1,002', '1,002'],
    ['minus one', 'minus one'],
  ])('the number "%s" goes into the file as %s', (text, value) => {
    expect(typedValue(number, text)).toBe(value);
  });

  test('a quantity goes into the file as it was typed; an empty required field is for the engine to refuse', () => {
    for (const text of ['34 in', '0,9 m', '85 cm', '', '3']) expect(typedValue(required, text)).toBe(text);
  });

  test.each([
    ['34 in', METRIC, '0.8636 m'],
    ['34 in', INCHES, '34 in'],
    ['64 mm', METRIC, '64 mm'],
    ['0,9 m', METRIC, '0,9 m'],
    ['85 cm', METRIC, '0.85 m'],
    ['flat', METRIC, 'flat'],
    ['0.5 mm', INCHES, '0.019685 in'],
  ] as const)('the length %s is shown in the user’s unit', (text, units, shown) => {
    expect(shownText(text, 'length', 'set.height', units)).toBe(shown);
  });

  test('a film is shown in units of film', () => {
    expect(shownText('1e-7 m', 'length', 'film.target', METRIC)).toBe('100 nm');
    expect(shownText('100 nm', 'length', 'film.target', INCHES)).toBe('1000 Å');
    expect(shownText('1e-5 torr', 'pressure', 'vacuum.pressure', INCHES)).toBe('1e-5 torr');
  });

  test('what is shown is what the file says, to the digits shown', () => {
    const length = fc.tuple(
      fc.integer({ min: -99999, max: 99999 }),
      fc.constantFrom('m', 'mm', 'cm', 'in', 'ft', 'mil', 'nm'),
    );
    fc.assert(
      fc.property(length, fc.constantFrom('m', 'cm', 'mm', 'in', 'ft'), ([digits, unit], shown) => {
        const text = `${digits / 1000} ${unit}`;
        const [inFile, onScreen] = [text, shownText(text, 'length', 'x', { ...METRIC, length: shown })].map((one) =>
          parseQuantity(one, 'length'),
        );
        if (!inFile?.ok || !onScreen?.ok) throw new Error('expected lengths');
        expect(Math.abs(onScreen.value - inFile.value)).toBeLessThanOrEqual(SHOWN * Math.abs(inFile.value));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('tables, meshes and the tree', () => {
  test('faults of a table are told by row and column', () => {
    const { faults, filamentCount, rows } = previewTable('name,x,y,z\n,mm,mm,mm\nF1,1,2,3\nF2,1,two,3\nF3,1,2\n');
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [4, 'y'],
      [5, null],
    ]);
    expect([filamentCount, rows.length]).toEqual([0, 4]);
    expect(previewTable('x;y;z\nm;m;m\n1,5;0;1').filamentCount).toBe(1);
  });

  test('a mesh comes out in the size of its unit', () => {
    const extent = meshExtent(cubeStl([400, 300, 200]), 'mm');
    if (!extent.ok) throw new Error(extent.reason);
    expect(extent.triangles).toBe(12);
    [0.4, 0.3, 0.2].forEach((side, k) => expect(extent.size[k]).toBeCloseTo(side, 6));
    expect(meshExtent(new TextEncoder().encode('no mesh'), 'mm').ok).toBe(false);
  });

  test('every part of every preset has one row under open branches', () => {
    for (const { file } of presets) {
      const opened = openPlantFile(file);
      if (!opened.ok) throw new Error(file.name);
      const closed = treeRows(opened, new Set(), String);
      expect(closed).toHaveLength(9);
      const open = new Set([
        'types',
        'sets',
        'feeds',
        'obstacles',
        'witnesses',
        ...opened.file.filaments.map((_, i) => `set/${i}`),
      ]);
      const rows = treeRows(opened, open, String);
      expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
      expect(rows.filter(({ part }) => part?.kind === 'filament')).toHaveLength(opened.plant.filaments.length);
      for (const { part, parent } of rows) expect(part ? (branchesOf(part).at(-1) ?? null) : null).toBe(parent);
    }
  });

  test('each key is told once', () => {
    expect(new Set(plantKeys.map(({ keys }) => keys)).size).toBe(plantKeys.length);
    expect(plantKeys.find(({ keys }) => keys === 'X')?.does).toContain('out of use');
  });
});

test('a value that a form takes away comes back as its default', () => {
  const file = presets[0]!.file as DesignFile;
  const bare = withValue(file, ['film', 'tolerance'], undefined);
  expect(valueAt(bare, ['film', 'tolerance'])).toBeUndefined();
  const opened = openPlantFile(bare);
  expect(opened.ok && opened.plant.film.tolerance).toBe(0.1);
});
