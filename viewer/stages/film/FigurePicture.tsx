/** The coat as an error of the mirror's figure: its map, and the aberrations that make it up. */
import { useId, useMemo, useState } from 'react';
import type { FilmReport } from '../../../engine/film/filmReport.ts';
import type { Removable } from '../../../engine/film/figure.ts';
import type { Coat } from '../../../engine/index.ts';
import type { MapSubject } from '../../../workers/picture/mapSubject.ts';
import { extentOf, symmetricScale } from '../../../workers/picture/valueScale.ts';
import { MapPlate } from '../../charts/MapPlate.tsx';
import { lengthUnit, shownText, thicknessUnit } from '../../charts/shownUnits.ts';
import { useUnits, type Units } from '../../state/units.ts';
import { useFilmView } from './filmView.ts';
import { ZernikeBars } from './ZernikeBars.tsx';

interface FigurePictureProps {
  readonly coat: Coat;
  readonly report: FilmReport;
}

type Error = 'surface' | 'wavefront';
const NM = 1e9;
/** An even coat is not painted with the pattern of its rounding: least span of the colours, nm. */
const LEAST_SPAN_nm = 0.2;

function figureSubject({ plant, face, thickness }: Coat, report: FilmReport, shown: Error, units: Units): MapSubject {
  const factor = (shown === 'wavefront' ? 2 : 1) * NM;
  const values = report.figure.surface.map((value) => value * factor);
  return {
    plant,
    face,
    label: shown === 'wavefront' ? 'Wavefront error' : 'Surface error',
    values,
    thickness,
    scale: symmetricScale(extentOf(values), LEAST_SPAN_nm),
    palette: 'twoSided',
    keyLevels: [{ value: 0, text: '0', isDashed: false, isFragile: true }],
    keyPlaces: [],
    barMarks: [],
    unit: thicknessUnit(units),
    lengthUnit: lengthUnit(units),
  };
}

const REMOVABLE: readonly (readonly [Removable, string])[] = [
  ['tilt', 'tilt'],
  ['defocus', 'defocus'],
];

function toggled(remove: readonly Removable[], which: Removable): Removable[] {
  return remove.includes(which) ? remove.filter((one) => one !== which) : [...remove, which];
}

export function FigurePicture({ coat, report }: FigurePictureProps) {
  const id = useId();
  const units = useUnits();
  const remove = useFilmView((view) => view.remove);
  const [shown, setShown] = useState<Error>('surface');
  const subject = useMemo(() => figureSubject(coat, report, shown, units), [coat, report, shown, units]);
  const [low, high] = extentOf(subject.values);
  const range = `from ${shownText(low, thicknessUnit(units), 2)} to ${shownText(high, thicknessUnit(units), 2)}`;
  return (
    <div className="film-split">
      <section className="panel face-map film-map" aria-labelledby={id}>
        <div className="chart-head">
          <h2 id={id}>
            {subject.label}, face on <small>mean taken off</small>
          </h2>
          <div className="map-controls" role="group" aria-label="Figure">
            <span className="map-choice">
              <label htmlFor={`${id}-shown`}>Error of the</label>
              <select id={`${id}-shown`} value={shown} onChange={({ target }) => setShown(target.value as Error)}>
                <option value="surface">surface</option>
                <option value="wavefront">wavefront, twice as much</option>
              </select>
            </span>
            <span className="map-choice">without</span>
            {REMOVABLE.map(([which, label]) => (
              <label key={which} className="check">
                <input
                  type="checkbox"
                  checked={remove.includes(which)}
                  onChange={() => useFilmView.setState({ remove: toggled(remove, which) })}
                />
                {label}
              </label>
            ))}
          </div>
        </div>
        <MapPlate
          subject={subject}
          description={`Map of the ${shown} error that the coat adds, face on: ${range}. Violet stands out toward the light, orange lies back.`}
        />
      </section>
      <ZernikeBars figure={report.figure} />
    </div>
  );
}
