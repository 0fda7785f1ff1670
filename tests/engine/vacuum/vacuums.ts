/** Pumping systems for tests, written as in a design file; their numbers are invented. */
import { vacuumSchema } from '../../../engine/design/vacuumSchema.ts';
import { systemOf, type PumpSystem } from '../../../engine/vacuum/system.ts';

/** The system of a vacuum section; the room is 10 m³ with 30 m² of wall unless the section says otherwise. */
export function systemFrom(system: object, vacuum: object = {}): PumpSystem {
  const checked = vacuumSchema.parse({ ...vacuum, system });
  if (!checked.system) throw new Error('the section describes no system');
  return systemOf(checked.system, checked, { volume: 10, wallArea: 30 });
}

/** One pump of constant speed and nearly no ultimate pressure. */
export const steadyPump = (speed: string, more: object = {}): object => ({
  name: 'steady',
  kind: 'rotary',
  speed,
  ultimate: '1e-12 mbar',
  ...more,
});

/** Rotary, Roots and diffusion pumps with lines, three kinds of surface, a leak and a glow discharge. */
export const FULL_PLANT = {
  volume: '13 m3',
  pumps: [
    {
      name: 'rotary',
      kind: 'rotary',
      speed: '117 l/s',
      line: [
        { part: 'tube', diameter: '15 cm', length: '3 m' },
        { part: 'bend', diameter: '15 cm' },
      ],
    },
    { name: 'blower', kind: 'roots', speed: '614 l/s', line: [{ part: 'tube', diameter: '20 cm', length: '1 m' }] },
    {
      name: 'diffusion',
      kind: 'diffusion',
      speed: '15500 l/s',
      count: 2,
      line: [
        { part: 'aperture', diameter: '80 cm' },
        { part: 'baffle', diameter: '80 cm' },
      ],
    },
  ],
  surfaces: [
    { material: 'mild steel' },
    { name: 'seals', material: 'fluoroelastomer', area: '0.2 m2' },
    { material: 'glass', area: '5 m2' },
  ],
  leak: '1e-3 mbar l/s',
  glow: {},
};
