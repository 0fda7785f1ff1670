/** Cost of the deposit kernels for one source and one point, law by law, beside plain TypeScript in the same run. */
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../engine/emission/filamentSource.ts';
import { createFace } from '../../engine/geometry/face.ts';
import type { OrientedPoints } from '../../engine/geometry/orientedPoints.ts';
import { openPlantFile } from '../../engine/plant/openPlant.ts';
import type { Plant } from '../../engine/plant/plant.ts';
import { createPlainKernel, RUN, type DepositKernel } from '../../engine/transport/depositKernel.ts';
import { createSimdKernel } from '../../engine/transport/simd/simdKernel.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

const REPEATS = 9;
const WARM_UP = 3;
const POINTS = 5_000;
/** A mean free path of 2 m, as in air at 3e-5 mbar or so. */
const PER_FREE_PATH = 0.5;

interface KernelCase {
  readonly name: string;
  readonly law: EmissionLaw;
  readonly perFreePath?: number;
  readonly hasShield?: boolean;
  /** ns a pair asked for, double and single */
  readonly goals?: readonly [number, number];
}

const CASES: readonly KernelCase[] = [
  { name: 'cosine', law: { kind: 'cosine', power: 1 }, goals: [2.3, 1.2] },
  { name: 'cosine power 3', law: { kind: 'cosine', power: 3 }, goals: [2.3, 1.2] },
  { name: 'cosine power 2.5', law: { kind: 'cosine', power: 2.5 } },
  { name: 'isotropic', law: { kind: 'isotropic' }, goals: [3.5, 2] },
  { name: 'straight wire', law: { kind: 'wire' }, goals: [3.5, 2] },
  { name: 'open coil', law: { kind: 'coil' }, goals: [3.5, 2] },
  { name: 'cosine in gas', law: { kind: 'cosine', power: 1 }, perFreePath: PER_FREE_PATH },
  { name: 'cosine past a shield', law: { kind: 'cosine', power: 1 }, hasShield: true },
];

/** The filaments of a plant under a law: the cosine aims at the mirror, the others lie along the coil. */
function sourcesUnder(plant: Plant, { law, hasShield }: KernelCase): FilamentSource[] {
  return plant.filaments.map(({ source, coilAxis }) => ({
    ...source,
    law,
    axis: Float64Array.from(source.axis, (_, i) => (law.kind === 'cosine' ? [0, 0, -1] : coilAxis)[i % 3]!),
    shield: hasShield ? { direction: [0.6, 0, -0.8], cosHalfAngle: 0.8 } : null,
  }));
}

/** ns a pair for summing all sources on all points. */
function medianPerPair(
  kernel: DepositKernel,
  sources: readonly FilamentSource[],
  points: OrientedPoints,
  { perFreePath = 0, hasShield = false }: KernelCase,
): number {
  const out = new Float64Array(RUN);
  const pass = (): void => {
    for (let begin = 0; begin < points.count; begin += RUN) {
      kernel.load(points, begin, Math.min(points.count, begin + RUN), perFreePath);
      for (const source of sources) {
        kernel.clear();
        if (hasShield) for (let j = 0; j < source.count; j++) kernel.addPastShield(source, j);
        else kernel.addAll(source);
        kernel.readInto(out);
      }
    }
  };
  const times: number[] = [];
  for (let i = 0; i < WARM_UP + REPEATS; i++) {
    const start = performance.now();
    pass();
    if (i >= WARM_UP) times.push(performance.now() - start);
  }
  const pairs = points.count * sources.reduce((sum, { count }) => sum + count, 0);
  return ((times.toSorted((a, b) => a - b)[REPEATS >> 1] ?? NaN) * 1e6) / pairs;
}

/** Double and single precision for every law, medians of nine after three to warm up, one thread. */
export function kernelRows(): Row[] {
  const opened = openPlantFile(benchDesign());
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  const { points } = createFace(opened.plant.shape, POINTS);
  const plain = createPlainKernel();
  const [double, single] = [createSimdKernel(), createSimdKernel({ precision: 'single' })];
  return CASES.flatMap((each): Row[] => {
    const sources = sourcesUnder(opened.plant, each);
    const reference = medianPerPair(plain, sources, points, each);
    const rows = [double, single].map((kernel, k): Row => {
      const time = kernel ? medianPerPair(kernel, sources, points, each) : NaN;
      return {
        what: `${each.name}, SIMD in ${k === 0 ? 'double' : 'single'} precision`,
        figure: kernel
          ? `${time.toFixed(2)} ns a pair, ${(reference / time).toFixed(1)} × TypeScript’s ${reference.toFixed(1)}`
          : 'no SIMD here',
        goal: each.goals ? `≤ ${each.goals[k]}` : '',
      };
    });
    return rows;
  });
}
