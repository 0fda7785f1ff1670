/** What the residual gas does to the vapour of a plant, with the range in which the model may be wrong. */
import {
  atomFreePath,
  CROSS_SECTION_DOUBT,
  DEFAULT_VAPOUR,
  firstFlightSurvival,
} from '../../../../engine/gas/freePath.ts';
import { componentsOf, type GasName } from '../../../../engine/gas/gases.ts';
import { gasReport, meanVapourSpeed, type GasReport } from '../../../../engine/gas/gasReport.ts';
import { impingementByGas } from '../../../../engine/gas/impingement.ts';
import type { Plant } from '../../../../engine/index.ts';
import { residualGas } from './residualGas.ts';

/** A value with its ends under the models that are not ruled out. */
export interface Doubted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface GasCase {
  readonly report: GasReport;
  /** m, of vapour at its mean speed */
  readonly vapourPath: Doubted;
  /** share of the vapour that meets no molecule over the mean throw, 1 */
  readonly survival: Doubted;
  /** molecules of each gas that strike a surface, 1/(m²·s) */
  readonly impingementBy: readonly (readonly [GasName, number])[];
  /** molecules in the tank, 1/m³ */
  readonly density: number;
}

/** Models at the middle and at both ends of what is known of the cross-section. */
const MODELS = [1, 1 + CROSS_SECTION_DOUBT, 1 - CROSS_SECTION_DOUBT].map((crossSectionScale) => ({
  ...DEFAULT_VAPOUR,
  crossSectionScale,
}));

/** A number under the middle model, and its ends under the others. */
function doubted(valueOf: (model: (typeof MODELS)[number]) => number): Doubted {
  const [value = NaN, ...others] = MODELS.map(valueOf);
  return { value, low: Math.min(value, ...others), high: Math.max(value, ...others) };
}

/** The gas of a plant's shot; null if no filament evaporates anything, so that there is no vapour to follow. */
export function gasCase(plant: Plant): GasCase | null {
  if (!plant.filaments.some(({ charge, outOfUse }) => charge > 0 && !outOfUse)) return null;
  const gas = residualGas(plant.vacuum);
  const report = gasReport(plant, gas);
  return {
    report,
    vapourPath: doubted((model) => atomFreePath(gas, meanVapourSpeed(model), model)),
    survival: doubted((model) => firstFlightSurvival(gas, report.throw.mean, model)),
    impingementBy: [...impingementByGas(gas)],
    density: componentsOf(gas).reduce((sum, { density }) => sum + density, 0),
  };
}
