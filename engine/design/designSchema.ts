/** The design file as a whole: one plant and one shot. */
import { z } from 'zod';
import { content, label, list, section } from './fields.ts';
import { filamentSetSchema, filamentTypeSchema } from './filamentSchema.ts';
import { filmSchema } from './filmSchema.ts';
import { firingSchema } from './firingSchema.ts';
import { mirrorSchema, tankSchema, witnessSchema } from './mirrorSchema.ts';
import { obstacleSchema } from './obstacleSchema.ts';
import { quoteValue } from './quantity.ts';
import { vacuumSchema } from './vacuumSchema.ts';

/** The version that this code writes; older ones are migrated, newer ones refused. */
export const CURRENT_VERSION = 1;

export const designSchema = section('a design', {
  $schema: content('the address of a JSON Schema', 2000, 'for editors that complete and check').optional(),
  format: z.literal('evenfall', { error: ({ input }) => `expected "evenfall"; found ${quoteValue(input)}` }),
  version: z.literal(CURRENT_VERSION, {
    error: ({ input }) => `expected version ${CURRENT_VERSION}; found ${quoteValue(input)}`,
  }),
  name: label('name of the plant'),
  story: content('text', 4000, 'a sentence or two about it').optional(),
  mirror: mirrorSchema,
  tank: tankSchema,
  filamentTypes: z.record(label('name of the type'), filamentTypeSchema, {
    error: ({ input, code }) =>
      code === 'invalid_key'
        ? `expected a name of 1 to 80 characters; found ${quoteValue(input)}`
        : `expected filament types by name; found ${quoteValue(input)}`,
  }),
  filaments: list('filament sets', filamentSetSchema, 0, 200),
  obstacles: list('obstacles', obstacleSchema, 0, 500).default([]),
  witnesses: list('witnesses', witnessSchema, 0, 500).default([]),
  vacuum: vacuumSchema.prefault({}),
  firing: firingSchema.prefault({}),
  film: filmSchema.prefault({}),
});

/** A design as it stands in a file: quantities are strings with their unit. */
export type DesignFile = z.input<typeof designSchema>;
/** A checked design: SI numbers, defaults filled in. */
export type Design = z.output<typeof designSchema>;
export type MirrorDesign = Design['mirror'];
export type TankDesign = Design['tank'];
export type FilamentTypeDesign = Design['filamentTypes'][string];
export type FilamentSetDesign = Design['filaments'][number];
export type EmissionDesign = FilamentTypeDesign['emission'];
export type ObstacleDesign = Design['obstacles'][number];
export type WitnessDesign = Design['witnesses'][number];
export type VacuumDesign = Design['vacuum'];
export type PumpingDesign = NonNullable<VacuumDesign['system']>;

/** The JSON Schema (draft 2020-12) of the design file, for editors that complete and check as one types. */
export function designJsonSchema(): object {
  return { title: 'Evenfall design file', ...z.toJSONSchema(designSchema, { io: 'input' }) };
}
