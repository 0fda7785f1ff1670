/** Whether the vacuum is good enough, in a sentence, from the gas and what it does to the film. */
import type { Units } from '../../state/units.ts';
import type { GasReport } from './gas/gasReport.ts';
import { pressureText, shareText } from './vacuumText.ts';

export interface VacuumVerdict {
  readonly level: 'good' | 'caution' | 'bad';
  readonly sentence: string;
  readonly second: string;
}

/** Shares of the vapour that fly straight: above the first the map holds as drawn, below the second it does not. */
const STRAIGHT = 0.98;
const ASTRAY = 0.9;

export function vacuumVerdict(report: GasReport, units: Units): VacuumVerdict {
  const { survival, gas } = report;
  const pressure = pressureText(units, gas.pressure);
  const level = survival.value >= STRAIGHT ? 'good' : survival.value >= ASTRAY ? 'caution' : 'bad';
  const share = shareText(survival.value);
  const sentence = {
    good: `Good enough to fire: at ${pressure}, ${share} of the vapour flies straight to the mirror.`,
    caution: `Doubtful: at ${pressure}, only ${share} of the vapour flies straight to the mirror.`,
    bad: `Not good enough to fire: at ${pressure}, only ${share} of the vapour flies straight to the mirror.`,
  }[level];
  return { level, sentence, second: '' };
}
