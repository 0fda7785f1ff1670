/** Figures of the smooth field: from nothing, after a move, its error, and ring layouts a second. */
import type { EmissionLaw } from '../../engine/emission/emissionLaw.ts';
import { valuesOnFaceInto } from '../../engine/field/evaluateSeries.ts';
import { createFieldSolver, type FieldSolver } from '../../engine/field/fieldSolver.ts';
import { fieldStatistics } from '../../engine/field/fieldStatistics.ts';
import { coilPattern } from '../../engine/field/ringPattern.ts';
import { createRingTrial } from '../../engine/field/ringTrial.ts';
import { createFace } from '../../engine/geometry/face.ts';
import type { KeyedSource } from '../../engine/transport/transport.ts';
import { anyKernel, bruteForce, farthest, ringSources } from '../engine/field/fieldPlants.ts';
import { honestyOf } from '../engine/field/honesty.ts';
import { shapeOf } from '../support/plants.ts';
import type { Row } from './row.ts';

const REPEATS = 21;
const WARM_UP = 10;
const BRUTE_POINTS = 400_000;
/** Layouts of each run of the ring trial. */
const LAYOUTS = 4000;

const SHAPE = shapeOf({
  rimRadius: 1.3,
  holeRadius: 0.275,
  clearInnerRadius: 0.275,
  clearOuterRadius: 1.3,
  curvature: 1 / 11.96,
  conicConstant: -1,
});

const LAWS: readonly (readonly [string, EmissionLaw])[] = [
  ['cosine', { kind: 'cosine', power: 1 }],
  ['open coil', { kind: 'coil' }],
];

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 0)} ms`;
const percent = (value: number): string => `${(100 * value).toFixed(4)} %`;

/** Median time of `work` in ms, after some runs to warm up. */
function median(work: (turn: number) => void): number {
  const times: number[] = [];
  for (let i = 0; i < REPEATS + WARM_UP; i++) {
    const start = performance.now();
    work(i);
    if (i >= WARM_UP) times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[REPEATS >> 1] ?? NaN;
}

/** 96 filaments of six loops on two rings. */
function rings(law: EmissionLaw, height: number): KeyedSource[] {
  return [
    { radius: 1.45, height },
    { radius: 0.95, height: 1 },
  ].flatMap((ring) => ringSources({ ...ring, count: 48, law }));
}

function lawRows(name: string, law: EmissionLaw): Row[] {
  const kernel = anyKernel();
  const face = createFace(SHAPE, 20_000);
  const out = new Float64Array(face.points.count);
  const still = rings(law, 0.9);
  const moved = Array.from({ length: REPEATS + WARM_UP }, (_, i) => rings(law, 0.9 + 1e-3 * (i + 1)));
  const even = new Float64Array(96).fill(2.7e-4);
  const uneven = even.map((mass, i) => mass * (1 + 0.3 * Math.sin(i * i)));
  const finish = (solver: FieldSolver, sources: readonly KeyedSource[], masses: Float64Array): void => {
    const field = solver.solve(sources, masses);
    valuesOnFaceInto(out, field.series, face);
    fieldStatistics(SHAPE, field);
  };
  const rows = [
    ['equal charges', even],
    ['uneven charges', uneven],
  ] as const;
  const timed = rows.flatMap(([charges, masses]): Row[] => {
    const fresh = median(() => finish(createFieldSolver(SHAPE, kernel), still, masses));
    const solver = createFieldSolver(SHAPE, kernel);
    finish(solver, still, masses);
    const move = median((turn) => finish(solver, moved[turn]!, masses));
    return [
      { what: `field on few nodes, ${name}, ${charges}: to map and statistics`, figure: ms(fresh), goal: '≤ 3 ms' },
      { what: `field on few nodes, ${name}, ${charges}: after moving a ring`, figure: ms(move), goal: '≤ 1.5 ms' },
    ];
  });
  return [...timed, ...errorRows(name, still, uneven)];
}

/** Error and stated error against the direct sum on many points, with the time that the sum takes. */
function errorRows(name: string, sources: readonly KeyedSource[], masses: Float64Array): Row[] {
  const many = createFace(SHAPE, BRUTE_POINTS);
  const start = performance.now();
  const brute = bruteForce({ sources, masses }, many.points);
  const time = performance.now() - start;
  const field = createFieldSolver(SHAPE, anyKernel()).solve(sources, masses);
  const found = valuesOnFaceInto(new Float64Array(many.points.count), field.series, many);
  const mean = brute.reduce((sum, value) => sum + value, 0) / brute.length;
  return [
    { what: `direct sum on ${many.points.count} points, ${name}`, figure: ms(time), goal: '' },
    { what: `field on few nodes, ${name}: error there`, figure: percent(farthest(found, brute) / mean), goal: '' },
    { what: `field on few nodes, ${name}: stated error`, figure: percent(field.error / mean), goal: '≤ 0.05 %' },
  ];
}

/** Layouts of two rings a second; radius, height and count of both change each time. */
function trialRow(name: string, law: EmissionLaw): Row {
  const trial = createRingTrial(SHAPE, anyKernel());
  const pattern = coilPattern(6, 0.064, 'tangential', law);
  const tried = [0, 1].map(() => ({ pattern, count: 48, radius: 1, height: 1, charge: 2.7e-4 }));
  const golden = (Math.sqrt(5) - 1) / 2;
  let worst = 0;
  const time = median(() => {
    for (let i = 0; i < LAYOUTS; i++) {
      tried.forEach((ring, k) => {
        const place = (i * golden * (k + 1)) % 1;
        ring.radius = 0.5 + k * 0.4 + 0.6 * place;
        ring.height = 0.7 + 0.7 * ((i * golden * golden) % 1);
        ring.count = 24 + (i % 40);
      });
      const { error, mean } = trial.evaluate(tried);
      worst = Math.max(worst, error / mean);
    }
  });
  const rate = Math.round((1000 * LAYOUTS) / time);
  return { what: `layouts of two rings, ${name}, to ${percent(worst)}`, figure: `${rate} /s`, goal: '≥ 5000 /s' };
}

/**
 * A hundred seeded plants: the largest error over the stated one.
 *
 * @param pointCount points of each direct sum; 400,000 take a few minutes
 */
export function honestyRow(pointCount: number): Row {
  const found = Array.from({ length: 100 }, (_, i) => honestyOf(i + 1, pointCount));
  const worst = Math.max(...found.map(({ error, stated }) => (stated > 0 ? error / stated : 0)));
  const left = found.reduce((sum, { rough }) => sum + rough, 0);
  const all = found.reduce((sum, { filaments }) => sum + filaments, 0);
  return {
    what: `100 plants × ${pointCount} points: error over stated error (${left} of ${all} filaments left to direct sums)`,
    figure: worst.toFixed(2),
    goal: '≤ 1',
  };
}

/** All rows of the smooth field. */
export function fieldRows(honestyPoints = 20_000): Row[] {
  return [
    ...LAWS.flatMap(([name, law]) => lawRows(name, law)),
    ...LAWS.map(([name, law]) => trialRow(name, law)),
    honestyRow(honestyPoints),
  ];
}
