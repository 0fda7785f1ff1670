/** The probe's reading, and its place as fields for those who do not point. */
import { parseQuantity } from '../../engine/index.ts';
import { lengthUnit, shownLength, shownText, thicknessUnit } from '../charts/shownUnits.ts';
import { clockDegrees, degrees, signedPercent } from '../format/numbers.ts';
import { EditField } from '../panels/EditField.tsx';
import { probeAt, useProbe } from '../state/probeStore.ts';
import { useResult } from '../state/resultStore.ts';
import { useUnits } from '../state/units.ts';
import './probeBar.css';

/** The probe moved to a place given by radius and angle about the middle of the glass. */
function moveTo(centerX: number, radius: number, angle: number): string | null {
  probeAt(centerX + radius * Math.cos(angle), radius * Math.sin(angle));
  return useProbe.getState().reading ? null : 'this place is off the glass';
}

export function ProbeBar() {
  const coat = useResult((state) => state.coat);
  const { x, y, reading } = useProbe();
  const units = useUnits();
  if (!coat) return null;
  const { centerX } = coat.plant.shape;
  const [radius, angle] = [Math.hypot(x - centerX, y), Math.atan2(y, x - centerX)];
  const toPlace = (text: string, dimension: 'length' | 'angle'): string | null => {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) return parsed.message;
    return dimension === 'length' ? moveTo(centerX, parsed.value, angle) : moveTo(centerX, radius, parsed.value);
  };
  const mean = coat.statistics.mean.value;
  return (
    <div className="probe-bar" role="group" aria-label="Probe">
      <EditField
        label="Radius"
        value={shownLength(radius, lengthUnit(units))}
        onCommit={(text) => toPlace(text, 'length')}
        stepFactor={10}
      />
      <EditField
        label="Angle"
        value={`${clockDegrees(angle).replace('°', '')} deg`}
        onCommit={(text) => toPlace(text, 'angle')}
        stepFactor={10}
      />
      <dl>
        <div>
          <dt>Thickness</dt>
          <dd className="strong">
            {reading ? shownText(reading.thickness * 1e9, thicknessUnit(units), 2) : 'off the glass'}
          </dd>
        </div>
        <div>
          <dt>From the mean</dt>
          <dd>{reading && mean > 0 ? signedPercent(reading.thickness / mean - 1) : '–'}</dd>
        </div>
        <div>
          <dt>Mean incidence</dt>
          <dd>{reading && Number.isFinite(reading.meanArrival) ? degrees(reading.meanArrival) : '–'}</dd>
        </div>
      </dl>
    </div>
  );
}
