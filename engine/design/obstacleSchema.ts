/** Solid things in the tank that cast shadows and catch vapour. */
import { z } from 'zod';
import {
  choice,
  content,
  direction,
  kindError,
  label,
  NOT_NEGATIVE,
  point,
  POSITIVE,
  quantity,
  section,
} from './fields.ts';
import { MAX_TEXT } from './readJson.ts';
import { quoteValue } from './quantity.ts';

const name = label('name of the obstacle');
const diameter = quantity('length', 'diameter', POSITIVE);
const ends = { from: point('middle of one end'), to: point('middle of the other end') };
const plane = { center: point('its middle'), normal: direction('perpendicular to its plane') };
const rotation = z
  .tuple([quantity('angle', 'about x'), quantity('angle', 'about y'), quantity('angle', 'about z')], {
    error: ({ input }) => `expected three angles, such as ["0 deg", "0 deg", "30 deg"]; found ${quoteValue(input)}`,
  })
  .meta({ description: 'turned about x, then y, then z' })
  .optional();

const mesh = section('a mesh', {
  shape: z.literal('mesh'),
  name,
  file: content('a file name', 400, 'name of an STL file beside the design').optional(),
  data: content('an STL file as base64 text', MAX_TEXT, 'an STL file as base64 text, instead of a file').optional(),
  unit: choice('unit of the numbers in the STL file', ['m', 'cm', 'mm', 'in']).default('mm'),
  position: point('where the origin of the mesh goes').optional(),
  rotation,
});

export const obstacleSchema = z
  .discriminatedUnion(
    'shape',
    [
      section('a box', {
        shape: z.literal('box'),
        name,
        center: point('its middle'),
        size: z.tuple([diameter, diameter, diameter], {
          error: ({ input }) => `expected three lengths, such as ["1 m", "0.1 m", "0.1 m"]; found ${quoteValue(input)}`,
        }),
        rotation,
      }),
      section('a cylinder', { shape: z.literal('cylinder'), name, ...ends, diameter }),
      section('a tube', { shape: z.literal('tube'), name, ...ends, diameter }),
      section('a cone frustum', {
        shape: z.literal('cone frustum'),
        name,
        ...ends,
        fromDiameter: quantity('length', 'diameter at "from"', NOT_NEGATIVE),
        toDiameter: quantity('length', 'diameter at "to"', NOT_NEGATIVE),
      }),
      section('a disc', { shape: z.literal('disc'), name, ...plane, diameter }),
      section('an annulus', {
        shape: z.literal('annulus'),
        name,
        ...plane,
        innerDiameter: quantity('length', 'inner diameter', NOT_NEGATIVE),
        outerDiameter: diameter,
      }),
      section('a sphere', { shape: z.literal('sphere'), name, center: point('its middle'), diameter }),
      mesh,
    ],
    kindError('a shape', 'shape', ['box', 'cylinder', 'tube', 'cone frustum', 'disc', 'annulus', 'sphere', 'mesh']),
  )
  .meta({ description: 'an obstacle' });
