/** The gas around the shot: how far molecules and vapour fly at every pressure. */
import { useMemo } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import { fileNameOf } from '../../../format/fileName.ts';
import { useUnits } from '../../../state/units.ts';
import { pathText, pressureText, shareText } from '../vacuumText.ts';
import { freePathChart, survivalChart } from './gasCharts.ts';
import type { GasReport } from './gasReport.ts';

interface GasPictureProps {
  readonly plant: Plant;
  readonly report: GasReport;
}

export function GasPicture({ plant, report }: GasPictureProps) {
  const units = useUnits();
  const paths = useMemo(() => freePathChart(plant, report, units), [plant, report, units]);
  const survival = useMemo(() => survivalChart(plant, report, units), [plant, report, units]);
  const stem = fileNameOf(plant.name).replace('.json', '');
  const at = `At ${pressureText(units, report.gas.pressure)}`;
  return (
    <div className="vacuum-split">
      <LogChart
        title="Mean free path"
        description={`Mean free paths of the gas and of aluminium vapour in it against pressure. ${at} they are ${pathText(units, report.gasPath)} and ${pathText(units, report.vapourPath.value)}; from filaments to mirror it is ${pathText(units, report.throwLength)}.`}
        data={paths}
        fileName={`${stem}-free-path`}
      />
      {report.throwLength > 0 && (
        <LogChart
          title="Vapour that flies straight"
          description={`Share of the vapour that meets no molecule on the way to the mirror, against pressure. ${at} it is ${shareText(report.survival.value)}.`}
          data={survival}
          fileName={`${stem}-straight-vapour`}
        />
      )}
    </div>
  );
}
