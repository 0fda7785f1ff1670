/** The user's units, one for each kind of quantity, remembered in the browser. */
import { create } from 'zustand';
import { persist } from 'zustand/middleware';
import { formatQuantity, type DimensionName } from '../../engine/index.ts';

/** Kinds of quantity that people choose a unit for; a thickness is a length with units of its own. */
export type UnitKind = 'length' | 'thickness' | 'mass' | 'pressure' | 'temperature';

export const UNIT_CHOICES = {
  length: ['m', 'cm', 'mm', 'in', 'ft'],
  thickness: ['nm', 'Å'],
  mass: ['mg', 'g', 'oz'],
  pressure: ['mbar', 'Pa', 'Torr'],
  temperature: ['degC', 'K', 'degF'],
} as const satisfies Record<UnitKind, readonly string[]>;

export type Units = Readonly<Record<UnitKind, string>>;

const DEFAULTS: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };

export const useUnits = create<Units>()(persist(() => DEFAULTS, { name: 'evenfall-units' }));

/** Chooses a unit from UNIT_CHOICES. */
export function setUnit(kind: UnitKind, unit: string): void {
  if ((UNIT_CHOICES[kind] as readonly string[]).includes(unit)) useUnits.setState({ [kind]: unit });
}

/** An SI value as a quantity in the user's unit, such as "0.9 m". */
export function shownQuantity(units: Units, kind: UnitKind, value: number, digits = 6): string {
  const dimension: DimensionName = kind === 'thickness' ? 'length' : kind;
  return formatQuantity(value, dimension, units[kind], digits);
}
