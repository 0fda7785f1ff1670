/** Broken filament lists in CSV and broken meshes, within the design and beside it. */
import { edit, type BrokenDesign } from './brokenDesign.ts';

const PATH = 'filaments[3].csv';
const inline = (name: string, rows: readonly string[], message: string): BrokenDesign =>
  edit(name, { 'filaments[3].filaments': undefined, [PATH]: rows.join('\n') }, PATH, message);
const beside = (name: string, file: string, content: string | undefined, message: string): BrokenDesign =>
  edit(
    name,
    { 'filaments[3].filaments': undefined, 'filaments[3].file': file },
    'filaments[3].file',
    message,
    content === undefined ? {} : { [file]: content },
  );

/** A text STL: one right triangle, 100 mm at its sides, above the mirror. */
const FACET = [
  'facet normal 0 0 1',
  'outer loop',
  'vertex 0 0 1500',
  'vertex 100 0 1500',
  'vertex 0 100 1500',
  'endloop',
  'endfacet',
];
export const TEXT_STL = ['solid plate', ...FACET, 'endsolid plate', ''].join('\n');

/** A binary STL with a declared number of triangles and as many bytes as asked for. */
function binaryStl(declared: number, byteCount: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(byteCount);
  new DataView(bytes.buffer).setUint32(80, declared, true);
  return bytes;
}

const mesh = (name: string, fields: object, path: string, message: string, files = {}): BrokenDesign =>
  edit(name, { 'obstacles[1]': { shape: 'mesh', name: 'arm', ...fields } }, path, message, files);

export const BROKEN_COMPANIONS: readonly BrokenDesign[] = [
  // CSV in the design
  inline('CSV: empty', [''], 'expected a heading row, a unit row and at least one filament'),
  inline('CSV: heading only', ['x,y,z'], 'a unit row and at least one filament'),
  inline('CSV: ragged row', ['x,y,z', 'm,m,m', '0,0,1', '0,0'], 'row 4: expected 3 cells, as in the heading; found 2'),
  inline('CSV: unknown column', ['x,y,z,feeder', 'm,m,m,', '0,0,1,A'], 'unknown column "feeder"; did you mean "feed"?'),
  inline('CSV: column twice', ['x,y,z,x', 'm,m,m,m', '0,0,1,0'], 'the column "x" stands twice'),
  inline('CSV: no x', ['y,z', 'm,m', '0,1'], 'missing x'),
  inline(
    'CSV: no unit row',
    ['x,y,z', '0,0,1', '0.1,0,1'],
    'row 2: expected units, such as m or mm; found "0", "0", "1"',
  ),
  inline(
    'CSV: a unit missing',
    ['x,y,z', 'm,,m', '0,0,1'],
    'row 2, column y: expected a unit of length, such as m, km, cm, mm; found nothing',
  ),
  inline(
    'CSV: an unknown unit',
    ['x,y,z', 'm,m,cubit', '0,0,1'],
    'row 2, column z: expected a unit of length, such as m, km, cm, mm; found "cubit"',
  ),
  inline('CSV: a unit of mass', ['x,y,z', 'm,m,kg', '0,0,1'], 'row 2, column z: expected a unit of length'),
  inline('CSV: a number missing', ['x,y,z', 'm,m,m', '0,,1'], 'row 3, column y: expected a number; found nothing'),
  inline('CSV: a word', ['x,y,z', 'm,m,m', '0,left,1'], 'row 3, column y: expected a length'),
  inline('CSV: NaN', ['x,y,z', 'm,m,m', '0,NaN,1'], 'row 3, column y'),
  inline('CSV: 1e999', ['x,y,z', 'm,m,m', '0,1e999,1'], 'the number is too large'),
  inline(
    'CSV: a negative charge',
    ['x,y,z,charge', 'm,m,m,g', '0,0,1,-1'],
    'row 3, column charge: expected a mass of zero or more',
  ),
  inline('CSV: half an axis', ['x,y,z,axis_x', 'm,m,m,', '0,0,1,1'], 'axis_x, axis_y and axis_z together'),
  inline(
    'CSV: an axis of zero',
    ['x,y,z,axis_x,axis_y,axis_z', 'm,m,m,,,', '0,0,1,0,0,0'],
    'row 3: expected an axis that is not zero',
  ),
  inline(
    'CSV: a long name',
    ['x,y,z,name', 'm,m,m,', `0,0,1,${'n'.repeat(1000)}`],
    'row 3, column name: expected a name of 1 to 80',
  ),
  inline(
    'CSV: decimal commas between commas',
    ['x,y,z', 'm,m,m', '0,5,0,5,1,0'],
    'row 3: expected 3 cells, as in the heading; found 6',
  ),
  inline(
    'CSV: 5,001 filaments',
    ['x,y,z', 'm,m,m', ...Array.from({ length: 5001 }, () => '0,0,1')],
    'at most 5000 filaments; found 5001',
  ),
  inline(
    'CSV: one filament outside the tank',
    ['x,y,z', 'm,m,m', '0,0.5,1', '2,0,1'],
    'row 4: filament 2 reaches (2, -0.01183, 0.9918) m, which is outside the tank',
  ),
  // CSV beside the design
  beside('a CSV file that is not there', 'missing.csv', undefined, 'the file "missing.csv" is not there'),
  beside('a CSV file with a ragged row', 'ragged.csv', 'x,y,z\nm,m,m\n0,0\n', 'row 3: expected 3 cells'),
  beside('a CSV file that is no text', 'binary.csv', '\u0000\u0001\u0002\n\u0003\n\u0004\n', 'unknown column'),
  beside(
    'a CSV file of 50 MB',
    'large.csv',
    `x,y,z\nm,m,m\n${'0,0,1\n'.repeat(8_000_000)}`,
    'at most 2.0 MB; found 48.0 MB',
  ),
  edit(
    'a number for a file',
    { 'filaments[3].filaments': undefined, 'filaments[3].file': 7 },
    'filaments[3].file',
    'expected a file name; found 7',
  ),
  // meshes
  mesh('a mesh without file or data', {}, 'obstacles[1]', 'expected either "file" or "data"'),
  mesh('a mesh with both', { file: 'both.stl', data: 'AAAA' }, 'obstacles[1]', 'found both', { 'both.stl': TEXT_STL }),
  mesh('a mesh with rubbish for base64', { data: 'not base64!' }, 'obstacles[1].data', 'base64'),
  mesh('a mesh with too little data', { data: 'AAAA' }, 'obstacles[1].data', 'expected an STL file'),
  mesh('a mesh without triangles', { file: 'bare.stl' }, 'obstacles[1].file', 'expected an STL file', {
    'bare.stl': 'solid a\nendsolid a\n',
  }),
  mesh('a mesh that is not there', { file: 'absent.stl' }, 'obstacles[1].file', 'the file "absent.stl" is not there'),
  mesh('a binary STL cut off', { file: 'cut.stl' }, 'obstacles[1].file', 'expected an STL file', {
    'cut.stl': binaryStl(100, 84 + 50 * 99),
  }),
  mesh('a binary STL that boasts', { file: 'boast.stl' }, 'obstacles[1].file', 'expected an STL file', {
    'boast.stl': binaryStl(4_000_000_000, 84),
  }),
  mesh('a text STL cut off', { file: 'half.stl' }, 'obstacles[1].file', 'expected an STL file', {
    'half.stl': TEXT_STL.slice(0, 70),
  }),
  mesh('a text STL with NaN', { file: 'nan.stl' }, 'obstacles[1].file', 'expected an STL file', {
    'nan.stl': TEXT_STL.replace('vertex 100', 'vertex NaN'),
  }),
  mesh('a mesh in furlongs', { file: 'unit.stl', unit: 'furlong' }, 'obstacles[1].unit', '"m", "cm", "mm", "in"', {
    'unit.stl': TEXT_STL,
  }),
];
