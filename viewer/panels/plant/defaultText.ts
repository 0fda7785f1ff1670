/** What holds where a field is left out, told from the plant where the schema cannot know it. */
import { formatQuantity } from '../../../engine/index.ts';
import { typeCharge } from '../../../engine/plant/placeFilaments.ts';
import { filamentTypeSchema } from '../../../engine/design/filamentSchema.ts';
import { chargeText } from '../../state/edits/tableText.ts';
import { lengthText } from '../../state/edits/lengths.ts';
import type { Present } from '../../state/edits/parts.ts';
import type { Part } from '../../state/selection.ts';
import type { Field } from './fields/field.ts';

const length = (metres: number): string => lengthText(Number(metres.toPrecision(9)), 'm');

/** Defaults that follow from the rest of the plant, by place. */
const FROM_PLANT: Readonly<Record<string, (present: Present, part: Part | null) => string | undefined>> = {
  'mirror.thickness': ({ plant }) => length(plant.shape.thickness),
  'mirror.clearAperture.innerDiameter': ({ plant }) => length(2 * plant.shape.clearInnerRadius),
  'mirror.clearAperture.outerDiameter': ({ plant }) => length(2 * plant.shape.clearOuterRadius),
  'tank.behindMirror': ({ plant }) => length(-plant.tank.lowZ),
  'type.charge': ({ file }, part) => (part?.kind === 'type' ? chargeOfType(file.filamentTypes[part.name]) : undefined),
  'set.charge': ({ file }, part) =>
    part?.kind === 'set' ? chargeOfType(file.filamentTypes[file.filaments[part.index]?.type ?? '']) : undefined,
  'set.filaments.charge': ({ plant }, part) => {
    if (part?.kind !== 'filament') return undefined;
    const filament = plant.filaments.find(({ set, number }) => set === part.set && number === part.number);
    return filament && chargeText(filament.charge);
  },
};

/** What a filament of a type carries by its clips. */
function chargeOfType(type: unknown): string | undefined {
  const parsed = filamentTypeSchema.safeParse(type);
  const charge = parsed.success ? typeCharge(parsed.data) : undefined;
  return charge === undefined ? undefined : formatQuantity(charge, 'mass', 'mg', 9);
}

/** The default of a field as the file would say it; undefined if there is none. */
export function defaultTextOf(field: Field, present: Present, part: Part | null): string | undefined {
  const computed = FROM_PLANT[field.place];
  if (computed) return computed(present, part);
  const { fallback } = field;
  return typeof fallback === 'string' || typeof fallback === 'number' ? String(fallback) : undefined;
}
