/** Designs that look odd and are right: they must open. */
import { edit, rewrite, whole, type BrokenDesign } from './brokenDesign.ts';
import { TEXT_STL } from './brokenCompanions.ts';
import { baseDesign } from './baseDesign.ts';

export type FineDesign = Pick<BrokenDesign, 'name' | 'text' | 'files'>;

const base = (): string => JSON.stringify(baseDesign());
const table = (name: string, content: string): FineDesign =>
  edit(name, { 'filaments[3].filaments': undefined, 'filaments[3].csv': content }, '', '');

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
  edit('a mesh beside the design', { 'obstacles[1]': { shape: 'mesh', name: 'arm', file: 'fine.stl' } }, '', '', {
    'fine.stl': TEXT_STL,
  }),
  edit('a mesh within the design', { 'obstacles[1]': { shape: 'mesh', name: 'arm', data: btoa(TEXT_STL) } }, '', ''),
];
