/** Where one coat is thicker than another, face-on. */
import { useId, useMemo } from 'react';
import type { Coat } from '../../engine/index.ts';
import { extentOf } from '../../workers/picture/valueScale.ts';
import { useUnits } from '../state/units.ts';
import './charts.css';
import { differenceOf } from './difference.ts';
import { differenceSubject, signedText } from './differenceSubject.ts';
import { MapPlate } from './MapPlate.tsx';

interface DifferenceMapProps {
  readonly a: Coat;
  readonly b: Coat;
  readonly nameA?: string;
  readonly nameB?: string;
}

export function DifferenceMap({ a, b, nameA = a.plant.name, nameB = b.plant.name }: DifferenceMapProps) {
  const units = useUnits();
  const id = useId();
  const difference = useMemo(() => differenceOf(a, b), [a, b]);
  const title = `${nameA} − ${nameB}`;
  const subject = useMemo(
    () => (difference.ok ? differenceSubject(a, difference, title, units) : null),
    [a, difference, title, units],
  );
  const [low, high] = difference.ok ? extentOf(difference.values) : [NaN, NaN];
  const range = `from ${signedText(low, units, 2)} to ${signedText(high, units, 2)}`;
  return (
    <section className="panel face-map" aria-labelledby={`${id} ${id}-names`}>
      <div className="chart-head">
        <h2 id={id}>Difference in thickness</h2>
        <p id={`${id}-names`} className="quiet">
          {title}
        </p>
      </div>
      {subject ? (
        <>
          <MapPlate
            subject={subject}
            description={`Map of the difference in thickness, ${title}, face on: ${range}. Violet is thicker, orange thinner.`}
          />
          <div className="chart-foot">
            <p className="map-reading">
              {low === 0 && high === 0 ? 'No difference anywhere' : range.replace('from', 'From')}
            </p>
          </div>
        </>
      ) : (
        <p className="chart-missing">{difference.ok ? '' : difference.reason}</p>
      )}
    </section>
  );
}
