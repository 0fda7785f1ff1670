/** When columns are made, kept and made again; whatever happens, the sums have the same bits. */
import { expect, test } from 'vitest';
import { createFace } from '../../../engine/geometry/face.ts';
import { createPlainKernel, type DepositKernel } from '../../../engine/transport/depositKernel.ts';
import { createLocalTransport } from '../../../engine/transport/localTransport.ts';
import { keyedPoints, keyedSourcesOf, sceneDataOf } from '../../../engine/transport/plantRequests.ts';
import { createSimdKernel } from '../../../engine/transport/simd/simdKernel.ts';
import { benchDesign } from '../../bench/benchDesign.ts';
import { plantOf } from '../../support/plants.ts';

const FILAMENTS = 20;
const plant = plantOf(benchDesign({ rings: 1, count: FILAMENTS }));
const face = keyedPoints(createFace(plant.shape, 600).points);
const request = {
  scene: sceneDataOf(plant),
  blocks: [face],
  sources: keyedSourcesOf(plant),
  withSignature: false,
  withArrival: false,
};
const STORE_BYTES = 2 ** 24;
const even = new Float64Array(FILAMENTS).fill(1);
const one = even.map((mass, f) => (f === 3 ? 2 * mass : mass));
const all = even.map((mass, f) => mass * (1 + f / 7));

/** The plain kernel with a count of the sub-sources that it summed. */
function counted(): { readonly kernel: DepositKernel; readonly added: () => number } {
  const plain = createPlainKernel();
  let added = 0;
  const add: DepositKernel['add'] = (source, j) => {
    added++;
    plain.add(source, j);
  };
  const addAll: DepositKernel['addAll'] = (source) => {
    added += source.count;
    plain.addAll(source);
  };
  return { kernel: { ...plain, add, addAll }, added: () => added };
}

/** Sums of one request after another, and how many sub-sources each took, in columns of one filament. */
async function work(asked: readonly Float64Array[], keepAll: boolean) {
  const { kernel, added } = counted();
  const transport = createLocalTransport(STORE_BYTES, kernel);
  const perColumn = plant.filaments[0]!.source.count * Math.ceil(face.points.count / 512);
  const sums: Float64Array[] = [];
  const columns: number[] = [];
  for (const mix of asked) {
    const before = added();
    const [result] = await transport.deposit({ ...request, mixes: [mix] });
    sums.push(result!.sums[0]!);
    columns.push((added() - before) / perColumn);
    if (keepAll) while (transport.keepMore());
  }
  return { sums, columns };
}

test('after a quiet moment a changed charge recomputes no column', async () => {
  const { columns } = await work([even, one, all], true);
  expect(columns).toEqual([FILAMENTS, 0, 0]);
});

test('without one, the columns beside a changed charge are computed once more, and then kept', async () => {
  const { columns } = await work([even, one, all, even.map((mass, f) => mass + f)], false);
  expect(columns).toEqual([FILAMENTS, 8, FILAMENTS - 8, 0]);
});

test('summed in passing or from columns, by either kernel, the sums have the same bits', async () => {
  const simd = createLocalTransport(STORE_BYTES, createSimdKernel() ?? createPlainKernel());
  const { sums: inPassing } = await work([even, one, all], false);
  const { sums: fromColumns } = await work([all, even, one], true);
  expect(fromColumns).toEqual([inPassing[2], inPassing[0], inPassing[1]]);
  for (const [k, mix] of [even, one, all].entries()) {
    const [result] = await simd.deposit({ ...request, mixes: [mix] });
    expect(result!.sums[0]).toEqual(inPassing[k]);
  }
});

test('several mixes at once give what each gives alone, however many they are', async () => {
  const mixes = [even, one, all, one.map((mass) => mass / 3), all.map((mass) => mass / 7)];
  const { sums } = await work(mixes, false);
  for (const count of [2, 5]) {
    const transport = createLocalTransport(STORE_BYTES);
    const [result] = await transport.deposit({ ...request, mixes: mixes.slice(0, count) });
    expect(result!.sums).toEqual(sums.slice(0, count));
  }
});

test('columns that would crowd the store are not kept in quiet moments', async () => {
  const transport = createLocalTransport(8 * FILAMENTS * face.points.count);
  await transport.deposit({ ...request, mixes: [even] });
  expect(transport.keepMore()).toBe(false);
});
