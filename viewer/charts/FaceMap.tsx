/** The coat seen face-on, as a flat map that the probe moves over. */
import { useDeferredValue, useId, useMemo, type KeyboardEvent, type ReactNode } from 'react';
import type { Coat } from '../../engine/index.ts';
import { isOnGlass } from '../../engine/geometry/mirrorShape.ts';
import { toPicture, type Frame } from '../../workers/picture/frame.ts';
import { decimalsOf } from '../../workers/picture/valueScale.ts';
import type { SharedRange } from '../format/mapScale.ts';
import { useMapView } from '../state/mapView.ts';
import { probeAt, useProbe } from '../state/probeStore.ts';
import { useUnits } from '../state/units.ts';
import './charts.css';
import { describeMap } from './describeMap.ts';
import { MapPlate } from './MapPlate.tsx';
import { MapTable } from './MapTable.tsx';
import { mapSubjectOf, probedValue } from './mapSubject.ts';
import { movedProbe } from './probeMoves.ts';
import { fieldUnit, lengthUnit, shownPlace, shownText } from './shownUnits.ts';

const GAP = 5;
const ARM = 12;

function ProbeCross({ frame }: { readonly frame: Frame }) {
  const { x, y, reading } = useProbe();
  if (!reading) return null;
  const [px, py] = toPicture(frame, x, y);
  const arms = `M${-ARM} 0h${ARM - GAP}M${GAP} 0h${ARM - GAP}M0 ${-ARM}v${ARM - GAP}M0 ${GAP}v${ARM - GAP}`;
  return (
    <g className="map-probe" transform={`translate(${px.toFixed(1)} ${py.toFixed(1)})`}>
      <path className="casing" d={arms} />
      <path d={arms} />
    </g>
  );
}

/** What the probe reads, in words. */
function ProbeText({ coat }: { readonly coat: Coat }) {
  const { reading } = useProbe();
  const { quantity } = useMapView();
  const units = useUnits();
  if (!reading) return <p className="map-reading">Probe off the glass</p>;
  const [x, y] = reading.position;
  const value = probedValue(coat, quantity, reading);
  const unit = fieldUnit({ thickness: 'nm', deviation: '%', incidence: '°', grazing: '%' }[quantity], units);
  const text = Number.isFinite(value) ? shownText(value, unit, 2) : 'nothing arrives';
  return (
    <p className="map-reading" aria-live="polite">
      Probe {shownPlace(x - coat.plant.shape.centerX, y, lengthUnit(units))}: <b>{text}</b>
    </p>
  );
}

interface FaceMapProps {
  readonly coat: Coat;
  /** lowest and highest value of all compared variants, in the unit of the field */
  readonly sharedRange?: SharedRange;
  /** stands in the map's head, such as MapControls */
  readonly children?: ReactNode;
}

export function FaceMap({ coat, sharedRange, children }: FaceMapProps) {
  const shownCoat = useDeferredValue(coat);
  const view = useMapView();
  const units = useUnits();
  const id = useId();
  const subject = useMemo(
    () => mapSubjectOf(shownCoat, view, units, sharedRange),
    [shownCoat, view, units, sharedRange],
  );
  const { shape } = shownCoat.plant;
  const point = (x: number, y: number): void => {
    if (isOnGlass(shape, x, y)) probeAt(x, y);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || !event.key.startsWith('Arrow')) return;
    event.preventDefault();
    const { x, y } = useProbe.getState();
    const place = movedProbe(shape, [x, y], event.key, event.shiftKey);
    if (place) probeAt(...place);
  };
  return (
    <section className="panel face-map" aria-labelledby={`${id}-title`}>
      <div className="chart-head">
        <h2 id={`${id}-title`}>{subject?.label ?? 'Map'}, face on</h2>
        {children}
      </div>
      <p id={`${id}-keys`} className="visually-hidden">
        Arrow keys move the probe, with Shift ten times as far.
      </p>
      {subject ? (
        <MapPlate
          subject={subject}
          description={describeMap(shownCoat, subject, decimalsOf(subject.scale.ticks) + 1)}
          describedBy={`${id}-keys`}
          onPoint={point}
          onKeyDown={onKeyDown}
        >
          {(frame) => <ProbeCross frame={frame} />}
        </MapPlate>
      ) : (
        <p className="chart-missing">
          This coat was computed without arrival angles. The thickness and its deviation can be shown.
        </p>
      )}
      <div className="chart-foot">
        <ProbeText coat={shownCoat} />
        <MapTable coat={shownCoat} />
      </div>
    </section>
  );
}
