/** Figures of the film: the whole report of a coat, and the map alone. */
import type { Coat } from '../../engine/coat/coat.ts';
import { createEvaluator } from '../../engine/coat/evaluateCoat.ts';
import { filmReport } from '../../engine/film/filmReport.ts';
import { BANDS, bandLight, lineLight } from '../../engine/film/light.ts';
import { mirrorFilm } from '../../engine/film/mirrorFilm.ts';
import { litFilm, readCurveInto, reflectanceCurve } from '../../engine/film/reflectanceCurve.ts';
import { openPlantFile } from '../../engine/plant/openPlant.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

const REPEATS = 9;
const MAP_POINTS = 50_000;

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : 1)} ms`;

/** Median time of `work` in ms, after two runs to warm up. */
function median(work: () => unknown): number {
  const times: number[] = [];
  for (let i = 0; i < REPEATS + 2; i++) {
    const start = performance.now();
    work();
    if (i >= 2) times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[REPEATS >> 1] ?? NaN;
}

/** The report of a coat on 20,000 points, and a map of 50,000. */
export async function filmRows(): Promise<Row[]> {
  const opened = openPlantFile(benchDesign());
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  const coat = await createEvaluator().evaluate(opened.plant, { rays: 0 });
  // a face of its own each time, so that its polynomials are worked out anew
  const onNewFace = (): Coat => ({ ...coat, face: { ...coat.face } });
  const again = median(() => filmReport(coat));
  const afresh = median(() => filmReport(onNewFace()));
  const inBand = median(() => filmReport(coat, { light: bandLight(BANDS.V) }));
  const { reflected } = litFilm(mirrorFilm(coat.plant.film), lineLight(550e-9));
  const thickness = Float64Array.from({ length: MAP_POINTS }, (_, i) => 60e-9 + (80e-9 * i) / MAP_POINTS);
  const out = new Float64Array(MAP_POINTS);
  const curve = reflectanceCurve(reflected, 60e-9, 140e-9);
  const map = median(() => readCurveInto(out, curve, thickness));
  const points = coat.face.points.count;
  return [
    { what: `film report, ${points} points, a new layout`, figure: ms(afresh), goal: '≤ 50 ms' },
    { what: `film report, ${points} points, a changed charge`, figure: ms(again), goal: '≤ 50 ms' },
    { what: `film report, ${points} points, averaged over V`, figure: ms(inBand), goal: '≤ 50 ms' },
    { what: `map of reflectance, ${MAP_POINTS} points`, figure: ms(map), goal: '≤ 1 ms' },
  ];
}
