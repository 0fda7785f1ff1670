/** Designs that look odd and are right: they must open. */
import { edit, rewrite, whole, type BrokenDesign } from './brokenDesign.ts';
import { TEXT_STL } from './brokenCompanions.ts';
import { baseDesign } from './baseDesign.ts';

export type FineDesign = Pick<BrokenDesign, 'name' | 'text' | 'files'>;

const base = (): string => JSON.stringify(baseDesign());
const table = (name: string, content: string): FineDesign =>
  edit(name, { 'filaments[3].filaments': undefined, 'filaments[3].csv': content }, '', '');

/** A pumping system with every key, its numbers invented. */
export const FULL_SYSTEM = {
  volume: '13 m3',
  wallArea: '30 m2',
  pumps: [
    {
      name: 'rotary',
      kind: 'rotary',
      speed: '248 cfm',
      until: '5e-2 mbar',
      line: [
        { part: 'tube', diameter: '100 mm', length: '3 m' },
        { part: 'bend', diameter: '100 mm' },
      ],
    },
    {
      name: 'blower',
      kind: 'roots',
      speed: '1300 cfm',
      from: '10 Torr',
      curve: [
        ['1e-3 mbar', '0 l/s'],
        ['1e-2 mbar', '500 l/s'],
        ['10 mbar', '614 l/s'],
      ],
    },
    {
      name: 'diffusion',
      kind: 'diffusion',
      speed: '15500 l/s',
      count: 2,
      ultimate: '2e-7 mbar',
      waterSpeed: '18 m3/s',
      line: [
        { part: 'aperture', diameter: '0.8 m' },
        { part: 'baffle', diameter: '0.8 m', transmission: '45 %' },
        { part: 'bend', diameter: '0.8 m', length: '0.4 m', angle: '45 deg' },
      ],
    },
  ],
  surfaces: [
    { material: 'mild steel' },
    { name: 'door seal', material: 'fluoroelastomer', area: '0.15 m2' },
    { material: 'glass', area: '5 m2', rate: '9.8e-9 mbar l/(s cm2)', exponent: 1.1 },
  ],
  leak: '5 sccm',
  venting: { open: '6 h', air: 'dry' },
  coldTrap: { area: '0.5 m2', from: '1e-3 mbar' },
  crossover: '0.1 Torr',
  glow: {
    pressure: '40 mTorr',
    gas: 'O2',
    voltage: '3 kV',
    current: '250 mA',
    area: '5 m2',
    clearance: '20 cm',
    duration: '15 min',
  },
};

export const FINE_DESIGNS: readonly FineDesign[] = [
  whole('a byte order mark', () => `\uFEFF${base()}`, '', ''),
  whole('blank lines around it', () => `\r\n\r\n${base()}\r\n`, '', ''),
  whole('brackets within a text', () => base().replace('A plant for tests.', '{[{['.repeat(100)), '', ''),
  rewrite('an escaped key', '"gas"', '"\\u0067as"', '', ''),
  edit('the key of a schema for editors', { $schema: './evenfall.schema.json' }, '', ''),
  edit(
    'only what is needed',
    { vacuum: undefined, film: undefined, obstacles: undefined, witnesses: undefined },
    '',
    '',
  ),
  edit(
    'inches and torr',
    { 'tank.diameter': '118 in', 'vacuum.pressure': '1e-5 Torr', 'film.target': '1000 Å' },
    '',
    '',
  ),
  edit('decimal commas', { 'tank.diameter': '3,05 m', 'film.tolerance': '7,5 %' }, '', ''),
  edit('no gap between number and unit', { 'tank.diameter': '3m' }, '', ''),
  edit('a flat mirror', { 'mirror.radiusOfCurvature': 'flat', 'mirror.conicConstant': 0 }, '', ''),
  edit('a convex mirror', { 'mirror.radiusOfCurvature': '-10 m' }, '', ''),
  edit('an aspheric coefficient in mm', { 'mirror.aspheric[0].coefficient': '1e-15/mm^3' }, '', ''),
  edit('a mirror on its side', { 'mirror.facing': { sideways: '30 deg' } }, '', ''),
  edit('an axis of three numbers', { 'filaments[0].axis': [1, 1, 0] }, '', ''),
  edit('a beam that sticks through the wall', { 'obstacles[1].size': ['9 m', '0.1 m', '0.1 m'] }, '', ''),
  edit('a free witness on the glass', { 'witnesses[1].position': ['0.6 m', '0 m', '0.018 m'] }, '', ''),
  edit('a charge of zero', { 'filaments[0].charge': '0 mg' }, '', ''),
  table(
    'a table with decimal points',
    'name,x,y,z,charge,feed\n,m,m,m,g,\na,0.9,0.1,1.1,0.2,spare\nb,-0.9,0.1,1.1,,\n',
  ),
  table(
    'a table with decimal commas',
    'name;x;y;z;charge\n;m;m;mm;g\na;0,900;0,1;1100,5;0,2\nb;-0,9;0,1;1.1e3;0,250\n',
  ),
  table('a table with tabs and a byte order mark', '\uFEFFx\ty\tz\r\nin\tin\tmm\r\n30\t4,5\t1100\r\n'),
  table('a table with an axis', 'x,y,z,axis_x,axis_y,axis_z\nm,m,m,,,\n0.9,0.1,1.1,0,2,0\n'),
  edit(
    'a pumping system in full',
    {
      'vacuum.mixture': [
        { gas: 'H2O', share: '85 %' },
        { gas: 'N2', share: '15 %' },
      ],
      'vacuum.system': FULL_SYSTEM,
    },
    '',
    '',
  ),
  edit(
    'a pumping system of one pump',
    { 'vacuum.system': { pumps: [{ name: 'r', kind: 'rotary', speed: '60 cfm' }] } },
    '',
    '',
  ),
  edit('a film that grows for five minutes', { firing: { duration: '5 min' } }, '', ''),
  edit('a mesh beside the design', { 'obstacles[1]': { shape: 'mesh', name: 'arm', file: 'fine.stl' } }, '', '', {
    'fine.stl': TEXT_STL,
  }),
  edit('a mesh within the design', { 'obstacles[1]': { shape: 'mesh', name: 'arm', data: btoa(TEXT_STL) } }, '', ''),
];
