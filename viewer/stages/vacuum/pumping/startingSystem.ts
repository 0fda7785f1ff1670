/** A pumping system to begin with, where a design describes none: generic, of no plant in particular. */
import type { DesignFile } from '../../../../engine/index.ts';

type SystemFile = NonNullable<NonNullable<DesignFile['vacuum']>['system']>;

export const STARTING_SYSTEM: SystemFile = {
  pumps: [
    {
      name: 'rotary pump',
      kind: 'rotary',
      speed: '250 m3/h',
      line: [{ part: 'tube', diameter: '100 mm', length: '3 m' }],
    },
    {
      name: 'Roots pump',
      kind: 'roots',
      speed: '1000 m3/h',
      line: [{ part: 'tube', diameter: '160 mm', length: '2 m' }],
    },
    {
      name: 'diffusion pump',
      kind: 'diffusion',
      speed: '12000 l/s',
      line: [{ part: 'baffle', diameter: '0.6 m', transmission: '40 %' }],
    },
  ],
  surfaces: [
    { name: 'tank wall', material: 'old coating' },
    { name: 'door seal', material: 'fluoroelastomer', area: '0.15 m2' },
  ],
  leak: '1e-3 mbar l/s',
  glow: {},
};
