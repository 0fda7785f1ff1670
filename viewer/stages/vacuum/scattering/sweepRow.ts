/** One pressure of a sweep: what becomes of the coat, and where the vapour ends. */
import type { Counted } from '../../../../engine/gas/scatterSummary.ts';
import type { ShotInGas } from './shotInGas.ts';

export interface SweepRow {
  /** Pa */
  readonly pressure: number;
  /** m */
  readonly mean: Counted;
  /** ±, as a share */
  readonly uniformity: Counted;
  /** shares of all vapour */
  readonly straight: Counted;
  readonly scattered: Counted;
  readonly lost: Counted;
}

export function sweepRow({ pressure, scattered, inGas }: ShotInGas): SweepRow {
  const { statistics, standardErrors } = inGas;
  const { summary } = scattered;
  return {
    pressure,
    mean: { value: statistics.mean.value, standardError: standardErrors.mean },
    uniformity: { value: statistics.uniformity.value, standardError: standardErrors.uniformity },
    straight: summary.ballisticOnMirror,
    scattered: summary.scatteredOnMirror,
    lost: summary.lost,
  };
}
