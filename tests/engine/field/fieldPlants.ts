/** Seeded plants without shadows for the smooth field, and their fields by brute force. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { EmissionLaw } from '../../../engine/emission/emissionLaw.ts';
import type { FilamentSource } from '../../../engine/emission/filamentSource.ts';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import type { OrientedPoints } from '../../../engine/geometry/orientedPoints.ts';
import { contentKey } from '../../../engine/transport/contentKey.ts';
import { RUN, createPlainKernel, type DepositKernel } from '../../../engine/transport/depositKernel.ts';
import { createSimdKernel } from '../../../engine/transport/simd/simdKernel.ts';
import type { KeyedSource } from '../../../engine/transport/transport.ts';
import { shapeOf } from '../../support/plants.ts';

export interface FieldPlant {
  readonly shape: MirrorShape;
  readonly sources: readonly KeyedSource[];
  /** kg */
  readonly masses: Float64Array;
}

export const anyKernel = (): DepositKernel => createSimdKernel() ?? createPlainKernel();

/** A source with the key of its content. */
export function keyed(source: FilamentSource): KeyedSource {
  const law = source.law.kind === 'cosine' ? `cosine ${source.law.power}` : source.law.kind;
  return { key: contentKey(source.position, source.axis, source.weight, law), source };
}

type Vector = readonly [number, number, number];

export interface CoilPlace {
  readonly loops: number;
  readonly length: number;
  readonly law: EmissionLaw;
  /** m */
  readonly at: Vector;
  /** unit vector along the coil */
  readonly along: Vector;
  /** direction in which a cosine law is aimed, unit */
  readonly aim?: Vector;
}

/** A coil as design.md defines it. */
export function coilSource({ loops, length, law, at, along, aim = [0, 0, -1] }: CoilPlace): FilamentSource {
  const axis = law.kind === 'cosine' ? aim : along;
  const offset = (j: number): number => ((j - (loops - 1) / 2) * length) / loops;
  return {
    count: loops,
    position: Float64Array.from(
      { length: 3 * loops },
      (_, i) => at[i % 3]! + offset(Math.floor(i / 3)) * along[i % 3]!,
    ),
    axis: Float64Array.from({ length: 3 * loops }, (_, i) => axis[i % 3]!),
    weight: new Float64Array(loops).fill(1 / loops),
    law,
    shield: null,
  };
}

export interface RingPlace {
  readonly count: number;
  readonly radius: number;
  readonly height: number;
  readonly start?: number;
  readonly centerX?: number;
  readonly loops?: number;
  readonly length?: number;
  readonly law: EmissionLaw;
  readonly axis?: 'tangential' | 'radial' | 'axial';
}

/** Filaments evenly spaced on a ring. */
export function ringSources(ring: RingPlace): KeyedSource[] {
  const { count, radius, height, start = 0, centerX = 0, loops = 6, length = 0.064, law, axis = 'tangential' } = ring;
  return Array.from({ length: count }, (_, i) => {
    const angle = start + (2 * Math.PI * i) / count;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const along: Vector = axis === 'axial' ? [0, 0, 1] : axis === 'radial' ? [c, s, 0] : [-s, c, 0];
    return keyed(coilSource({ loops, length, law, at: [centerX + radius * c, radius * s, height], along }));
  });
}

const LAWS: readonly EmissionLaw[] = [
  { kind: 'cosine', power: 1 },
  { kind: 'cosine', power: 2 },
  { kind: 'cosine', power: 3 },
  { kind: 'isotropic' },
  { kind: 'wire' },
  { kind: 'coil' },
];

/** A plant drawn from a seed: rings or scattered filaments, about 96 of them, over a mirror of any of the usual kinds. */
export function seededPlant(seed: number): FieldPlant {
  const random = xoroshiro128plus(seed);
  const between = (low: number, high: number): number => low + (high - low) * uniformFloat64(random);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniformFloat64(random) * list.length)]!;
  const rimRadius = pick([0.5, 1.3, 4]);
  const shape = shapeOf({
    rimRadius,
    holeRadius: pick([0, 0.15, 0.3]) * rimRadius,
    curvature: pick([0, 1 / 4, 1 / 9, -1 / 6]) / rimRadius,
    conicConstant: pick([-1, 0, -2.5]),
    centerX: pick([0, 0, 0, 0.8]) * rimRadius,
    cornerAngle: pick([null, null, null, 0.2]),
    clearOuterRadius: pick([1, 0.95]) * rimRadius,
  });
  const base = shape.curvature > 0 ? (shape.curvature * (shape.centerX + rimRadius) ** 2) / 2 : 0;
  const law = pick(LAWS);
  const loops = pick([1, 4, 6]);
  const length = 0.05 * rimRadius;
  const height = (): number => base + between(0.55, 1.2) * rimRadius;
  const sources: KeyedSource[] = [];
  if (pick([true, true, false])) {
    const rings = pick([1, 2, 3]);
    const axis = pick(['tangential', 'radial', 'axial'] as const);
    for (let i = 0; i < rings; i++) {
      const place = { radius: between(0.1, 1.2) * rimRadius, height: height(), start: between(0, 1) };
      const count = Math.round(96 / rings);
      sources.push(...ringSources({ ...place, count, centerX: shape.centerX, loops, length, law, axis }));
    }
  } else {
    for (let i = 0; i < 96; i++) {
      const [r, angle, turn] = [1.2 * rimRadius * Math.sqrt(between(0, 1)), between(0, 7), between(0, 7)];
      const at: Vector = [shape.centerX + r * Math.cos(angle), r * Math.sin(angle), height()];
      sources.push(keyed(coilSource({ loops, length, law, at, along: [Math.cos(turn), Math.sin(turn), 0] })));
    }
  }
  const uneven = pick([0, 0.3, 1]);
  return { shape, sources, masses: Float64Array.from(sources, () => 1e-3 * (1 + uneven * between(-1, 1))) };
}

/** Mass per area of sources at points by direct summation, kg/m². */
export function bruteForce(
  { sources, masses }: Pick<FieldPlant, 'sources' | 'masses'>,
  points: OrientedPoints,
  kernel: DepositKernel = anyKernel(),
  perFreePath = 0,
): Float64Array {
  const areal = new Float64Array(points.count);
  const run = new Float64Array(RUN);
  for (let begin = 0; begin < points.count; begin += RUN) {
    const end = Math.min(points.count, begin + RUN);
    kernel.load(points, begin, end, perFreePath);
    sources.forEach(({ source }, f) => {
      kernel.clear();
      for (let j = 0; j < source.count; j++) kernel.add(source, j);
      kernel.readInto(run);
      for (let i = begin; i < end; i++) areal[i]! += masses[f]! * run[i - begin]!;
    });
  }
  return areal;
}

/** The same plant without some of its sources. */
export function without({ shape, sources, masses }: FieldPlant, left: readonly number[]): FieldPlant {
  const stays = (f: number): boolean => !left.includes(f);
  return {
    shape,
    sources: sources.filter((_, f) => stays(f)),
    masses: masses.filter((_, f) => stays(f)),
  };
}

/** Largest |a − b|. */
export function farthest(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
}
