/**
 * A quantity as a field: shown in the user's unit, taken in any unit of its dimension, refused with the reason.
 *
 *     <QuantityField
 *       label="Base pressure"
 *       dimension="pressure"
 *       unit={units.pressure}
 *       value={basePressure}        // SI
 *       range={[1e-8, 1e5]}         // SI, both ends allowed
 *       onChange={setBasePressure}  // SI; only good values arrive
 *     />
 *
 * For a text that is no quantity, or an edit that may be refused by the engine, use EditField, which this is made of.
 */
import { formatQuantity, parseQuantity, type DimensionName } from '../../engine/index.ts';
import { EditField } from './EditField.tsx';

interface QuantityFieldProps {
  readonly label: string;
  readonly dimension: DimensionName;
  /** the unit that it is shown in; the user may type any other */
  readonly unit: string;
  /** SI */
  readonly value: number;
  /** lowest and highest value allowed, SI */
  readonly range?: readonly [low: number, high: number];
  /** significant digits shown */
  readonly digits?: number;
  /** called with the SI value; may answer why it is refused */
  readonly onChange: (value: number) => string | null | void;
  readonly isDisabled?: boolean;
}

export function QuantityField({
  label,
  dimension,
  unit,
  value,
  range: [low, high] = [-Infinity, Infinity],
  digits = 6,
  onChange,
  isDisabled = false,
}: QuantityFieldProps) {
  const shown = (number: number): string => formatQuantity(number, dimension, unit, digits);
  const commit = (text: string): string | null => {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok) return parsed.message;
    if (parsed.value < low) return `expected at least ${shown(low)}; found ${text}`;
    if (parsed.value > high) return `expected at most ${shown(high)}; found ${text}`;
    return onChange(parsed.value) ?? null;
  };
  return <EditField label={label} value={shown(value)} onCommit={commit} isDisabled={isDisabled} />;
}
