/** All that the Vacuum stage knows of a design: worked out once, for all of its pictures. */
import { useDeferredValue, useMemo } from 'react';
import type { Coat, Plant } from '../../../engine/index.ts';
import { useDesign } from '../../state/designStore.ts';
import { useResult } from '../../state/resultStore.ts';
import { useUnits } from '../../state/units.ts';
import { contaminationCase, type ContaminationCase } from '../../../engine/vacuum/contaminationCase.ts';
import { gasCase, type GasCase } from './gas/gasCase.ts';
import { gaugeReadings, type GaugeReadings } from './gaugeReadings.ts';
import { glowCase, type GlowCase } from './glow/glowCase.ts';
import { pumpingCase, type PumpingCase } from './pumping/pumpingCase.ts';
import { riseCase, type RiseCase } from './rise/riseCase.ts';
import { vacuumWords } from './vacuumText.ts';
import { useVacuumView } from './vacuumView.ts';

export interface VacuumState {
  readonly plant: Plant;
  /** the last coat that was worked out; its film is of this coat */
  readonly coat: Coat | null;
  /** null if nothing evaporates */
  readonly gas: GasCase | null;
  /** null until there is a coat without bare places */
  readonly film: ContaminationCase | null;
  /** null if the design describes no pumping system, or no glow discharge */
  readonly pumping: PumpingCase | null;
  readonly glow: GlowCase | null;
  readonly pumpDownRead: GaugeReadings;
  readonly riseRead: GaugeReadings;
  /** null while there are no readings */
  readonly rise: RiseCase | null;
}

export function useVacuum(): VacuumState {
  const { plant } = useDeferredValue(useDesign((state) => state.current));
  const coat = useDeferredValue(useResult((state) => state.coat));
  const { pumpDownText, riseText } = useDeferredValue(useVacuumView());
  const units = useUnits();
  const words = useMemo(() => vacuumWords(units), [units]);
  const gas = useMemo(() => gasCase(plant), [plant]);
  const film = useMemo(() => coat && contaminationCase(coat), [coat]);
  const pumping = useMemo(() => pumpingCase(plant, words), [plant, words]);
  const glow = useMemo(() => glowCase(plant, words), [plant, words]);
  const pumpDownRead = useMemo(() => gaugeReadings(pumpDownText), [pumpDownText]);
  const riseRead = useMemo(() => gaugeReadings(riseText), [riseText]);
  const rise = useMemo(() => riseCase(plant, riseRead.readings, words), [plant, riseRead, words]);
  return { plant, coat, gas, film, pumping, glow, pumpDownRead, riseRead, rise };
}
