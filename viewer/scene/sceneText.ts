/** Parts of the plant in words, for the tip under the pointer and for the spoken selection. */
import { inUnit, type Coat, type Filament } from '../../engine/index.ts';
import { fixed } from '../format/numbers.ts';
import { filamentsOf, nameOfPart } from '../state/edits/parts.ts';
import type { Part } from '../state/selection.ts';
import { shownQuantity, type Units } from '../state/units.ts';
import type { Design } from './handles.ts';
import { stateOf } from './parts/coilsPart.ts';

const CHARGE_DIGITS = 4;

/** How many of the user's units of thickness a nanometre is. */
export function perNanometre({ thickness }: Units): number {
  return Number(inUnit(1e-9, 'length', thickness).toPrecision(12));
}

/** A thickness in the user's unit, to a tenth of a nanometre. */
export function thicknessText(value: number, units: Units): string {
  const factor = perNanometre(units);
  return `${fixed(value * 1e9 * factor, factor > 1 ? 0 : 1)} ${units.thickness}`;
}

function filamentText(filament: Filament, units: Units): string {
  const charge = shownQuantity(units, 'mass', filament.charge, CHARGE_DIGITS);
  const state = stateOf(filament);
  const feed = filament.feed === null ? [] : [filament.feed];
  return [state === 'no charge' ? 'no charge' : charge, ...feed, ...(state === 'out of use' ? [state] : [])].join(', ');
}

/** What is worth knowing about a part beside its name. */
export function aboutPart(design: Design, coat: Coat | null, part: Part, units: Units): string {
  const { plant } = design;
  switch (part.kind) {
    case 'filament': {
      const [filament] = filamentsOf(plant, [part]);
      return filament ? filamentText(filament, units) : '';
    }
    case 'set':
    case 'feed': {
      const own = filamentsOf(plant, [part]);
      const charge = own.reduce((sum, { charge: each, outOfUse }) => sum + (outOfUse ? 0 : each), 0);
      return `${own.length} filaments, ${shownQuantity(units, 'mass', charge, CHARGE_DIGITS)} in all`;
    }
    case 'obstacle':
      return 'obstacle';
    case 'witness': {
      const thickness = coat?.plant === plant ? coat.witnessThickness[part.index] : undefined;
      return thickness === undefined ? 'witness' : `witness, ${thicknessText(thickness, units)}`;
    }
    default:
      return '';
  }
}

/** The selection in one sentence. */
export function selectionText(design: Design, coat: Coat | null, parts: readonly Part[], units: Units): string {
  const last = parts.at(-1);
  if (!last) return 'Nothing selected';
  const name = nameOfPart(design, last);
  if (parts.length > 1) return `${parts.length} parts selected, ${name} last`;
  const about = aboutPart(design, coat, last, units);
  return about === '' ? `Selected: ${name}` : `Selected: ${name}, ${about}`;
}
