/** The gas around the shot: how far molecules and vapour fly at every pressure. */
import { useMemo } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import { useUnits } from '../../../state/units.ts';
import { fileStem, pathText, pressureText, shareText } from '../vacuumText.ts';
import type { GasCase } from './gasCase.ts';
import { freePathChart, survivalChart } from './gasCharts.ts';

interface GasPictureProps {
  readonly plant: Plant;
  readonly gasCase: GasCase;
}

export function GasPicture({ plant, gasCase }: GasPictureProps) {
  const units = useUnits();
  const paths = useMemo(() => freePathChart(plant, gasCase, units), [plant, gasCase, units]);
  const survival = useMemo(() => survivalChart(plant, gasCase, units), [plant, gasCase, units]);
  const { report, vapourPath, survival: straight } = gasCase;
  const at = `At ${pressureText(units, report.gas.pressure)}`;
  return (
    <div className="vacuum-split">
      <LogChart
        title="Mean free path"
        description={`Mean free paths of the gas and of aluminium vapour in it against pressure. ${at} they are ${pathText(units, report.gasFreePath)} and ${pathText(units, vapourPath.value)}; from filaments to mirror it is ${pathText(units, report.throw.mean)}.`}
        data={paths}
        fileName={`${fileStem(plant)}-free-path`}
      />
      <LogChart
        title="Vapour that flies straight"
        description={`Share of the vapour that meets no molecule on the way to the mirror, against pressure. ${at} it is ${shareText(straight.value)}.`}
        data={survival}
        fileName={`${fileStem(plant)}-straight-vapour`}
      />
    </div>
  );
}
