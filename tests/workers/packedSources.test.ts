import { expect, test } from 'vitest';
import { keyedSourcesOf } from '../../engine/transport/plantRequests.ts';
import { presets } from '../../presets/index.ts';
import { createPacker, packSources, unpackSources } from '../../workers/packedSources.ts';
import { plantOf } from '../support/plants.ts';

test('filaments of every preset come out of a message as they went in', () => {
  const sources = presets.flatMap(({ file }) => keyedSourcesOf(plantOf({ ...file })));
  expect(new Set(sources.map(({ source }) => source.law.kind)).size).toBeGreaterThan(1);
  expect(unpackSources(structuredClone(packSources(sources)))).toEqual(sources);
});

test('nothing packs to nothing', () => {
  expect(unpackSources(packSources([]))).toEqual([]);
});

test('the same filaments for the next worker are packed once, others anew', () => {
  const sources = keyedSourcesOf(plantOf({ ...presets[0]!.file }));
  const pack = createPacker();
  const first = pack(sources);
  expect(first).toEqual(packSources(sources));
  expect(pack([...sources])).toBe(first);
  const fewer = sources.slice(1);
  expect(pack(fewer)).toEqual(packSources(fewer));
});
