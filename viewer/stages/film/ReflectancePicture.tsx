/** How much each place reflects, and how reflectance goes with thickness, wavelength and time. */
import { useId, useMemo, useState } from 'react';
import type { FilmReport } from '../../../engine/film/filmReport.ts';
import type { Coat } from '../../../engine/index.ts';
import { coatMap } from '../../../workers/picture/coatMap.ts';
import { decimalsOf, extentOf, roundScale } from '../../../workers/picture/valueScale.ts';
import { describeMap } from '../../charts/describeMap.ts';
import { LogChart } from '../../charts/log/LogChart.tsx';
import { MapPlate } from '../../charts/MapPlate.tsx';
import { lengthUnit, thicknessUnit } from '../../charts/shownUnits.ts';
import { fileNameOf } from '../../format/fileName.ts';
import { Tabs } from '../../panels/Tabs.tsx';
import { useUnits } from '../../state/units.ts';
import { ageingChart, spectrumChart, thicknessChart, transmissionChart } from './filmCharts.ts';
import { LightControls } from './LightControls.tsx';

interface ReflectancePictureProps {
  readonly coat: Coat;
  readonly report: FilmReport;
}

const PERCENT = { unit: '%', factor: 1 };

function ReflectanceMap({ coat, report }: ReflectancePictureProps) {
  const id = useId();
  const units = useUnits();
  const subject = useMemo(() => {
    const values = report.reflectanceMap.map((share) => 100 * share);
    return coatMap(
      coat,
      { values, label: 'Reflectance', unit: '%' },
      {
        scale: roundScale(extentOf(values)),
        valueOf: null,
        unit: PERCENT,
        thicknessUnit: thicknessUnit(units),
        lengthUnit: lengthUnit(units),
      },
    );
  }, [coat, report, units]);
  return (
    <section className="panel face-map film-map" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>
          Reflectance, face on <small>{report.light}</small>
        </h2>
        <LightControls />
      </div>
      <MapPlate subject={subject} description={describeMap(coat, subject, decimalsOf(subject.scale.ticks) + 1)} />
    </section>
  );
}

const CHARTS = {
  thickness: { label: 'Against thickness', make: thicknessChart },
  transmission: { label: 'Light let through', make: transmissionChart },
  spectrum: { label: 'Spectrum', make: spectrumChart },
  ageing: { label: 'Oxide and time', make: ageingChart },
} as const;
type Chart = keyof typeof CHARTS;

function FilmChart({ chart, coat, report }: ReflectancePictureProps & { readonly chart: Chart }) {
  const units = useUnits();
  const { title, description, data } = useMemo(
    () => CHARTS[chart].make(report, thicknessUnit(units)),
    [chart, report, units],
  );
  const fileName = `${fileNameOf(coat.plant.name).replace('.json', '')}-${chart}`;
  return <LogChart title={title} description={description} data={data} fileName={fileName} />;
}

export function ReflectancePicture({ coat, report }: ReflectancePictureProps) {
  const [chart, setChart] = useState<Chart>('thickness');
  return (
    <div className="film-split">
      <ReflectanceMap coat={coat} report={report} />
      <Tabs
        label="Charts of the film"
        chosen={chart}
        onChoose={setChart}
        tabs={(Object.keys(CHARTS) as Chart[]).map((id) => ({
          id,
          label: CHARTS[id].label,
          content: () => <FilmChart chart={id} coat={coat} report={report} />,
        }))}
      />
    </div>
  );
}
