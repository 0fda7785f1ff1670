/** How the vapour arrived, and where the film may be porous for it. */
import { useEffect, useId, useMemo, useState } from 'react';
import { POROUS_ANGLE, WATCH_ANGLE } from '../../../engine/film/obliqueFilm.ts';
import type { FilmReport } from '../../../engine/film/filmReport.ts';
import type { Coat } from '../../../engine/index.ts';
import { coatMap } from '../../../workers/picture/coatMap.ts';
import type { MapSubject } from '../../../workers/picture/mapSubject.ts';
import { decimalsOf, extentOf, roundScale } from '../../../workers/picture/valueScale.ts';
import { describeMap } from '../../charts/describeMap.ts';
import { MapPlate } from '../../charts/MapPlate.tsx';
import { lengthUnit, shownPlace, thicknessUnit } from '../../charts/shownUnits.ts';
import { mapFieldOf } from '../../format/mapField.ts';
import { degrees, percent } from '../../format/numbers.ts';
import { NumbersTable, type NumberRow } from '../../panels/NumbersTable.tsx';
import { wishArrival } from '../../state/arrivalWish.ts';
import { useUnits, type Units } from '../../state/units.ts';

interface QualityPictureProps {
  readonly coat: Coat;
  readonly report: FilmReport;
}

const FIELDS = { incidence: 'Mean angle of arrival', grazing: 'Share arriving beyond 60°' } as const;
type Field = keyof typeof FIELDS;
const DEGREES = 180 / Math.PI;

/** Lines of the angles from which on the film needs watching, or is expected to be porous. */
const LIMITS = [
  { value: WATCH_ANGLE * DEGREES, text: 'watch', isDashed: false },
  { value: POROUS_ANGLE * DEGREES, text: 'porous', isDashed: true },
];

function subjectOf(coat: Coat, shown: Field, units: Units): MapSubject | null {
  const field = mapFieldOf(coat, shown);
  if (!field) return null;
  const subject = coatMap(coat, field, {
    scale: roundScale(extentOf(field.values)),
    valueOf: null,
    unit: { unit: field.unit, factor: 1 },
    thicknessUnit: thicknessUnit(units),
    lengthUnit: lengthUnit(units),
  });
  return { ...subject, keyLevels: shown === 'incidence' ? LIMITS : [], keyPlaces: [] };
}

function rowsOf({ coat, report }: QualityPictureProps, units: Units): NumberRow[] {
  const { arrival, contamination, scatter } = report.quality;
  const angles: NumberRow[] = arrival
    ? [
        { label: 'Mean angle of arrival', help: 'by area, from the normal', value: degrees(arrival.meanAngle) },
        {
          label: 'Steepest mean angle',
          detail: shownPlace(
            arrival.worstPosition[0] - coat.plant.shape.centerX,
            arrival.worstPosition[1],
            lengthUnit(units),
          ),
          value: degrees(arrival.worstAngle),
        },
        {
          label: 'Lean of columns there',
          help: 'tan of the lean = ½ tan of the arrival',
          value: degrees(arrival.worstTilt),
        },
        {
          label: 'Arriving beyond 60°',
          help: 'share of all that is deposited',
          value: percent(arrival.grazingShare, 2),
        },
        {
          label: 'Area to watch',
          help: `mean angle beyond ${degrees(WATCH_ANGLE, 0)}`,
          value: percent(arrival.watchShare),
        },
        {
          label: 'Area expected to be porous',
          help: `mean angle beyond ${degrees(POROUS_ANGLE, 0)}, or half of the deposit beyond 60°`,
          value: percent(arrival.porousShare),
        },
      ]
    : [];
  return [
    ...angles,
    { label: 'Scattered by roughness', help: 'share of the reflected light', value: percent(scatter, 3) },
    ...(contamination
      ? [
          {
            label: 'Foreign molecules per aluminium atom',
            detail: `thinnest place, ${contamination.grade}`,
            help: 'as the Vacuum stage says',
            value: contamination.arrivalRatio.toPrecision(2),
          },
        ]
      : []),
  ];
}

export function QualityPicture({ coat, report }: QualityPictureProps) {
  const id = useId();
  const units = useUnits();
  const [shown, setShown] = useState<Field>('incidence');
  useEffect(wishArrival, []);
  const subject = useMemo(() => subjectOf(coat, shown, units), [coat, shown, units]);
  return (
    <div className="film-split">
      <section className="panel face-map film-map" aria-labelledby={id}>
        <div className="chart-head">
          <h2 id={id}>{FIELDS[shown]}, face on</h2>
          <span className="map-controls">
            <span className="map-choice">
              <label htmlFor={`${id}-shown`}>Quantity</label>
              <select id={`${id}-shown`} value={shown} onChange={({ target }) => setShown(target.value as Field)}>
                {Object.entries(FIELDS).map(([key, name]) => (
                  <option key={key} value={key}>
                    {name}
                  </option>
                ))}
              </select>
            </span>
          </span>
        </div>
        {subject ? (
          <MapPlate subject={subject} description={describeMap(coat, subject, decimalsOf(subject.scale.ticks) + 1)} />
        ) : (
          <p className="chart-missing">Working out the angles of arrival …</p>
        )}
      </section>
      <div className="film-scroll" role="region" aria-label="Numbers of the quality" tabIndex={0}>
        <NumbersTable
          caption="Quality of the film"
          labelHeading="over the clear aperture"
          rows={rowsOf({ coat, report }, units)}
        >
          <p>{report.quality.sentence}</p>
        </NumbersTable>
      </div>
    </div>
  );
}
