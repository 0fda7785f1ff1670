/** Chooses what the maps show, and over which range of colours. */
import { useId } from 'react';
import type { Coat } from '../../engine/index.ts';
import { mapFieldOf } from '../format/mapField.ts';
import { canStartAtZero, scaleOf } from '../format/mapScale.ts';
import { EditField } from '../panels/EditField.tsx';
import {
  setColorRange,
  showQuantity,
  startAtZero,
  useMapView,
  type ColorRange,
  type MappedQuantity,
} from '../state/mapView.ts';
import { useUnits } from '../state/units.ts';
import './charts.css';
import { readRangeEnd } from './rangeEnd.ts';
import { fieldUnit } from './shownUnits.ts';

const QUANTITIES: readonly (readonly [MappedQuantity, string])[] = [
  ['thickness', 'Thickness'],
  ['deviation', 'Deviation from target'],
  ['incidence', 'Mean incidence angle'],
  ['grazing', 'Share arriving beyond 60°'],
];

interface MapControlsProps {
  readonly coat: Coat;
  /** whether variants are compared that can share a range */
  readonly hasVariants?: boolean;
}

/** The two ends of a fixed range. */
function RangeFields({ range, unit }: { readonly range: ColorRange & { mode: 'fixed' }; readonly unit: string }) {
  const shown = fieldUnit(unit, useUnits());
  const text = (value: number): string => `${Number((value * shown.factor).toPrecision(6))} ${shown.unit}`;
  const commit = (end: 'low' | 'high', typed: string): string | null => {
    const read = readRangeEnd(typed, unit, shown);
    if (typeof read === 'string') return read;
    const next = { ...range, [end]: read };
    if (!(next.low < next.high))
      return `expected a lower end below the upper one; found ${text(next.low)} and ${text(next.high)}`;
    setColorRange(next);
    return null;
  };
  return (
    <>
      <EditField label="From" value={text(range.low)} onCommit={(typed) => commit('low', typed)} />
      <EditField label="to" value={text(range.high)} onCommit={(typed) => commit('high', typed)} />
    </>
  );
}

export function MapControls({ coat, hasVariants = false }: MapControlsProps) {
  const id = useId();
  const view = useMapView();
  const { quantity, range, fromZero } = view;
  const field = mapFieldOf(coat, quantity);
  const choose = (mode: string): void => {
    if (mode === 'fixed' && field) {
      const { low, high } = scaleOf(field.values, { ...view, range: { mode: 'automatic' } });
      setColorRange({ mode, low, high });
    } else setColorRange({ mode: mode === 'shared' ? 'shared' : 'automatic' });
  };
  return (
    <div className="map-controls" role="group" aria-label="Map">
      <span className="map-choice">
        <label className="lead" htmlFor={`${id}-quantity`}>
          Quantity
        </label>
        <select
          id={`${id}-quantity`}
          value={quantity}
          onChange={(event) => showQuantity(event.target.value as MappedQuantity)}
        >
          {QUANTITIES.map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      </span>
      <span className="map-choice">
        <label htmlFor={`${id}-range`}>Colours</label>
        <select id={`${id}-range`} value={range.mode} onChange={(event) => choose(event.target.value)}>
          <option value="automatic">automatic range</option>
          {field && <option value="fixed">fixed range</option>}
          {(hasVariants || range.mode === 'shared') && <option value="shared">same for all variants</option>}
        </select>
      </span>
      {canStartAtZero(view) && (
        <label className="check">
          <input type="checkbox" checked={fromZero} onChange={({ target }) => startAtZero(target.checked)} />
          <span>
            <span className="lead">Colours </span>from zero
          </span>
        </label>
      )}
      {range.mode === 'fixed' && field && <RangeFields range={range} unit={field.unit} />}
    </div>
  );
}
