/** Masses of a whole shot as text: in grams, or in ounces for those who think so. */
import { inUnit, type DimensionName } from '../../../engine/index.ts';
import type { Units } from '../../state/units.ts';

const MASS: DimensionName = 'mass';

/** The unit of the mass of a whole shot; milligrams are for single filaments. */
export function shotMassUnit(units: Units): 'g' | 'oz' {
  return units.mass === 'oz' ? 'oz' : 'g';
}

/** How many of that unit a kilogram is. */
export function perKilogram(units: Units): number {
  return inUnit(1, MASS, shotMassUnit(units));
}
