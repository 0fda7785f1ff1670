import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designJsonSchema, formatProblem, openPlant, openPlantFile, type OpenedPlant } from '../../../engine/index.ts';
import { baseDesign, editedDesign } from './baseDesign.ts';
import { faultsBySchema, type JsonSchema } from './jsonSchemaCheck.ts';
import { validDesign } from './validDesigns.ts';

const SEED = { seed: 4711, numRuns: 150 };
/** s; a large design on the slowest machine that runs these tests (0.14 s measured on two cores) */
const MOST_SECONDS = 1;

const schema = designJsonSchema() as JsonSchema;
const PRESETS = new URL('../../../presets/', import.meta.url);
const presets = readdirSync(PRESETS).filter((name) => name.endsWith('.json'));

function opened(result: OpenedPlant): Extract<OpenedPlant, { ok: true }> {
  if (!result.ok) throw new Error(result.problems.map(formatProblem).join('\n'));
  return result;
}

describe('the JSON Schema', () => {
  test('is one of draft 2020-12', () => {
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.type).toBe('object');
  });

  test('requires what has no default and allows no other keys, at every level', () => {
    expect(schema.required?.toSorted()).toEqual(
      ['format', 'version', 'name', 'mirror', 'tank', 'filamentTypes', 'filaments'].toSorted(),
    );
    expect(schema.properties?.['mirror']?.required).toEqual(['radiusOfCurvature', 'outerDiameter']);
    expect(schema.properties?.['tank']?.required).toEqual(['diameter', 'depth']);
    const open = objectsIn(schema).filter((part) => part.properties && part.additionalProperties !== false);
    expect(open).toEqual([]);
    expect(objectsIn(schema).filter((part) => part.properties).length).toBeGreaterThan(25);
  });

  test('describes every field, for the hints of an editor', () => {
    const silent = objectsIn(schema)
      .flatMap((part) => Object.entries(part.properties ?? {}))
      .filter(([, field]) => field.type === 'string' && field.const === undefined && !field.description);
    expect(silent.map(([key]) => key)).toEqual([]);
  });

  test('accepts the base design and refuses what differs from it in form', () => {
    expect(faultsBySchema(schema, baseDesign())).toEqual([]);
    const edits = [
      { obstacle: [] },
      { 'mirror.outerDiameter': undefined },
      { 'tank.depth': 2 },
      { 'filaments[0].arrangement': 'circle' },
      { 'filaments[0].count': 0 },
      { 'obstacles[0].diametr': '1 m' },
      { 'mirror.conicConstant': '-1' },
      { version: 2 },
    ];
    for (const edit of edits)
      expect(faultsBySchema(schema, editedDesign(edit)).length, JSON.stringify(edit)).toBeGreaterThan(0);
  });

  test.each(presets)('accepts the preset %s', (name) => {
    expect(faultsBySchema(schema, JSON.parse(readFileSync(new URL(name, PRESETS), 'utf8')))).toEqual([]);
  });
});

describe('valid designs', () => {
  test('open, and satisfy the schema', () => {
    fc.assert(
      fc.property(validDesign, (design) => {
        expect(faultsBySchema(schema, design)).toEqual([]);
        const { plant } = opened(openPlantFile(design));
        expect(plant.filaments.length).toBeGreaterThan(0);
        for (const { source } of plant.filaments)
          expect([...source.position, ...source.axis, ...source.weight].every(Number.isFinite)).toBe(true);
      }),
      SEED,
    );
  });

  test('give the same plant again after a round trip through JSON', () => {
    fc.assert(
      fc.property(validDesign, (design) => {
        const first = opened(openPlantFile(design));
        const again = opened(openPlantFile(JSON.parse(JSON.stringify(first.file))));
        expect(again.plant).toEqual(first.plant);
        expect(again.file).toEqual(first.file);
      }),
      SEED,
    );
  });

  test('are not changed by opening them', () => {
    const design = baseDesign();
    opened(openPlantFile(design));
    expect(design).toEqual(baseDesign());
  });

  test('of 5,000 filaments open within a second', () => {
    const filaments = Array.from({ length: 4981 }, (_, i) => ({
      name: `n${i}`,
      position: [`${(0.8 * Math.cos(i)).toFixed(4)} m`, `${(0.8 * Math.sin(i)).toFixed(4)} m`, '1 m'],
      axis: 'radial',
      charge: '0.2 g',
      feed: `f${i % 9}`,
    }));
    const text = JSON.stringify(editedDesign({ 'filaments[3].filaments': filaments, 'filaments[3].type': 'coil' }));
    const start = performance.now();
    const { plant } = opened(openPlant(text));
    expect((performance.now() - start) / 1000).toBeLessThan(MOST_SECONDS);
    expect(plant.filaments).toHaveLength(5000);
  });
});

describe('a file of version 0', () => {
  const { outerDiameter, ...mirror } = baseDesign()['mirror'] as Record<string, unknown>;
  const { target, ...film } = baseDesign()['film'] as Record<string, unknown>;
  const old = {
    ...baseDesign(),
    version: 0,
    mirror: { ...mirror, diameter: outerDiameter },
    film: { ...film, thickness: target },
  };

  test('opens as the plant that it described', () => {
    const { plant, file } = opened(openPlantFile(old));
    expect(plant).toEqual(opened(openPlantFile(baseDesign())).plant);
    expect(file.version).toBe(1);
    expect(file.mirror.outerDiameter).toBe('2 m');
    expect(file.film?.target).toBe('100 nm');
  });

  test('needs no film', () => {
    expect(opened(openPlantFile({ ...old, film: undefined })).plant.film.target).toBeCloseTo(1e-7, 20);
  });

  test('with the old key and the new one is refused, not guessed', () => {
    const result = openPlantFile({ ...old, mirror: { ...mirror, diameter: '1 m', outerDiameter } });
    expect(result.ok ? [] : result.problems.map(formatProblem)).toEqual([
      expect.stringContaining('mirror: unknown key "diameter"'),
    ]);
  });
});

/** Every object in a schema, itself included. */
function objectsIn(part: unknown): JsonSchema[] {
  if (typeof part !== 'object' || part === null) return [];
  return [part as JsonSchema, ...Object.values(part).flatMap(objectsIn)];
}
