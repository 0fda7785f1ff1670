/** Foreign molecules in the film: over the mirror, and against pressure. */
import { useId, useMemo } from 'react';
import type { Coat } from '../../../../engine/index.ts';
import { coatMap } from '../../../../workers/picture/coatMap.ts';
import { decimalsOf, extentOf, roundScale } from '../../../../workers/picture/valueScale.ts';
import { describeMap } from '../../../charts/describeMap.ts';
import { LogChart } from '../../../charts/log/LogChart.tsx';
import { MapPlate } from '../../../charts/MapPlate.tsx';
import { lengthUnit, thicknessUnit } from '../../../charts/shownUnits.ts';
import { scientific } from '../../../format/scientific.ts';
import { useUnits } from '../../../state/units.ts';
import { fileStem } from '../vacuumText.ts';
import type { ContaminationCase } from '../../../../engine/vacuum/contaminationCase.ts';
import { contaminationChart } from './contaminationChart.ts';

interface ContaminationPictureProps {
  readonly coat: Coat;
  readonly film: ContaminationCase;
}

const IN_A_HUNDRED = 100;

export function ContaminationPicture({ coat, film }: ContaminationPictureProps) {
  const id = useId();
  const units = useUnits();
  const chart = useMemo(() => contaminationChart(coat, film, units), [coat, film, units]);
  const subject = useMemo(() => {
    const values = film.map.map((ratio) => ratio * IN_A_HUNDRED);
    return coatMap(
      coat,
      { values, label: 'Foreign molecules per 100 aluminium atoms', unit: '' },
      {
        scale: roundScale(extentOf(values)),
        valueOf: null,
        unit: { unit: '', factor: 1 },
        thicknessUnit: thicknessUnit(units),
        lengthUnit: lengthUnit(units),
      },
    );
  }, [coat, film, units]);
  return (
    <div className="vacuum-split">
      <section className="panel face-map vacuum-map" aria-labelledby={id}>
        <div className="chart-head">
          <h2 id={id}>
            {subject.label} <small>over the whole shot, face on</small>
          </h2>
        </div>
        <MapPlate subject={subject} description={describeMap(coat, subject, decimalsOf(subject.scale.ticks) + 1)} />
      </section>
      <LogChart
        title="Foreign molecules per aluminium atom"
        description={`Molecules that stick for each aluminium atom at the thinnest place, against pressure: ${scientific(film.worst, 2)} in this shot, which is ${film.band.name}.`}
        data={chart}
        fileName={`${fileStem(coat.plant)}-foreign-molecules`}
      />
    </div>
  );
}
