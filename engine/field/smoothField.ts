/** A computed field with its error, as plain data; fields of different sources add up. */
import { createSeriesSum, thinned, type PolarSeries, type SeriesSum } from './polarSeries.ts';

/** Mass per area over the face, as it can be sent between workers. */
export interface SmoothField {
  /** kg/m² */
  readonly series: PolarSeries;
  /** bound of the error anywhere on the face, kg/m² */
  readonly error: number;
  /**
   * Indices of sources that are not in it, because no series of sensible length describes them: they
   * stand too close to the face, or their law has an edge. They want a direct sum.
   */
  readonly rough: readonly number[];
}

/** Adds a series row by row. Adds to `sum`, which must be large enough. */
export function addSeries(sum: SeriesSum, { radialCount, harmonics, cosine, sine }: PolarSeries): void {
  harmonics.forEach((m, i) => {
    const to = m * sum.radialCount;
    for (let k = 0; k < radialCount; k++) {
      sum.cosine[to + k]! += cosine[i * radialCount + k]!;
      sum.sine[to + k]! += sine[i * radialCount + k]!;
    }
  });
}

/**
 * The field of several sets of sources together, however their nodes were chosen; errors add up.
 *
 * @param fields at least one, all over the same face; `rough` indices must already mean the same list
 */
export function sumFields(fields: readonly SmoothField[]): SmoothField {
  const radialCount = Math.max(...fields.map(({ series }) => series.radialCount));
  const harmonicCount = Math.max(...fields.map(({ series }) => (series.harmonics.at(-1) ?? 0) + 1));
  const sum = createSeriesSum(radialCount, harmonicCount);
  for (const { series } of fields) addSeries(sum, series);
  const error = fields.reduce((all, field) => all + field.error, 0);
  const { series, leftOut } = thinned(fields[0]!.series, sum, 0);
  return { series, error: error + leftOut, rough: fields.flatMap(({ rough }) => rough) };
}
