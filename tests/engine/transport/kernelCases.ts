/** Points, sources and comparisons for tests of the deposit kernels. */
import fc from 'fast-check';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import { emissionTable } from '../../../engine/emission/emissionTable.ts';
import type { FilamentSource, Shield } from '../../../engine/emission/filamentSource.ts';
import { createOrientedPoints, type OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { createPlainKernel, RUN, type DepositKernel } from '../../../engine/transport/depositKernel.ts';
import { createSimdKernel, type SimdOptions } from '../../../engine/transport/simd/simdKernel.ts';

/** Laws without a transcendental function in SIMD: whole powers, and tables, which stay in TypeScript. */
export const EXACT_LAWS: readonly EmissionLaw[] = [
  { kind: 'isotropic' },
  { kind: 'cosine', power: 1 },
  { kind: 'cosine', power: 2 },
  { kind: 'cosine', power: 3 },
  { kind: 'cosine', power: 7 },
  { kind: 'cosine', power: 8 },
  { kind: 'cosine', power: 0 },
  { kind: 'wire' },
  { kind: 'coil' },
  { kind: 'table', table: emissionTable([0, 1, 3], [1, 0.5, 0.2]) },
];

export const nameOf = (law: EmissionLaw): string => (law.kind === 'cosine' ? `cosine power ${law.power}` : law.kind);
export const named = (laws: readonly EmissionLaw[]) => laws.map((law) => [nameOf(law), law] as const);

export const unit = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }))
  .map(([z, turn]) => [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn), z]);
export const place = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 3, maxLength: 3 });

/** Any number of points, whole vectors and runs or not. */
export const anyPoints = fc.array(fc.tuple(place, unit), { minLength: 1, maxLength: 40 }).chain((some) =>
  fc.integer({ min: 1, max: RUN + 3 }).map((count): OrientedPoints => {
    const points = createOrientedPoints(count);
    for (let i = 0; i < count; i++) {
      const [position, normal] = some[i % some.length]!;
      points.position.set(
        position!.map((x) => x + 1e-3 * i),
        3 * i,
      );
      points.normal.set(normal!, 3 * i);
    }
    return points;
  }),
);

export const anySource = fc.array(fc.tuple(place, unit, fc.double({ min: 0, max: 1, noNaN: true })), {
  minLength: 1,
  maxLength: 4,
});

/** Half-spaces, cones and wide cones. */
export const anyShield = fc.tuple(unit, fc.constantFrom(0, 0.5, 0.9, -0.4)).map(([direction, cosHalfAngle]): Shield => {
  const [x, y, z] = direction as [number, number, number];
  return { direction: [x, y, z], cosHalfAngle };
});

export function sourceOf(
  some: readonly (readonly [number[], number[], number])[],
  law: EmissionLaw,
  shield: Shield | null = null,
): FilamentSource {
  return {
    count: some.length,
    position: Float64Array.from(some.flatMap(([position]) => position)),
    axis: Float64Array.from(some.flatMap(([, axis]) => axis)),
    weight: Float64Array.from(some, ([, , weight]) => weight),
    law,
    shield,
  };
}

/** A source of weight 1 at the origin that looks along −z. */
export const downward = (law: EmissionLaw): FilamentSource => sourceOf([[[0, 0, 0], [0, 0, -1], 1]], law);

export const plain = createPlainKernel();

/** The SIMD kernel, which must run where the tests run. */
export function simdKernel(options?: SimdOptions): DepositKernel {
  const kernel = createSimdKernel(options);
  if (!kernel) throw new Error('no SIMD here');
  return kernel;
}

export interface SumOptions {
  readonly perFreePath?: number;
  readonly isShielded?: boolean;
  /** all sub-sources in one call */
  readonly isTogether?: boolean;
}

/** All deposits of a filament through a kernel, run by run, with the marks of its shield. */
export function sumOf(
  kernel: DepositKernel,
  source: FilamentSource,
  points: OrientedPoints,
  { perFreePath = 0, isShielded = false, isTogether = false }: SumOptions = {},
): { readonly deposit: Float64Array; readonly hidden: Uint8Array[] } {
  const deposit = new Float64Array(points.count);
  const hidden = Array.from({ length: source.count }, () => new Uint8Array(points.count));
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end, perFreePath);
    if (isTogether) kernel.addAll(source);
    else
      for (let j = 0; j < source.count; j++) {
        if (isShielded) kernel.addPastShield(source, j, hidden[j]!.subarray(begin, end));
        else kernel.add(source, j);
      }
    kernel.readInto(deposit.subarray(begin, end));
  }
  return { deposit, hidden };
}

/** Units in the last place between two numbers above zero. */
export function ulpsBetween(a: number, b: number): number {
  const [m, n] = new BigInt64Array(Float64Array.of(a, b).buffer);
  return Math.abs(Number(m! - n!));
}
