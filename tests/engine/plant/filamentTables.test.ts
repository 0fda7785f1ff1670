import { describe, expect, test } from 'vitest';
import { samplePlant } from './samplePlant.ts';

const LIST = {
  arrangement: 'list',
  filaments: [
    { name: 'a', position: ['700 mm', '12 in', '1.1 m'], axis: [1, -2, 2], charge: '0.25 g', feed: 'north' },
    { position: ['-701.5 mm', '0 in', '0.95 m'], axis: [0, 0, 1] },
    { name: 'c, "spare"', position: ['5e1 mm', '-8.25 in', '1 m'], axis: [0.1, 0.2, 0], charge: '0 g' },
  ],
};
const fromJson = samplePlant(LIST);

const COMMAS = [
  'name,x,y,z,axis_x,axis_y,axis_z,charge,feed',
  ',mm,in,m,,,,g,',
  'a,700,12,1.1,1,-2,2,0.25,north',
  ',-701.5,0,0.95,0,0,1,,',
  '"c, ""spare""",5e1,-8.25,1,.1,.2,0,0,',
];

describe('a filament list as CSV', () => {
  test.each([
    ['with commas', COMMAS.join('\n')],
    ['with Windows line ends and blank rows at its end', `${COMMAS.join('\r\n')}\r\n,,,,,,,,\r\n\r\n`],
    ['with a byte order mark', `\uFEFF${COMMAS.join('\n')}`],
    [
      'with blanks around the cells',
      COMMAS.map((row) => (row.includes('"') ? row : row.replaceAll(',', ' , '))).join('\n'),
    ],
    [
      'with semicolons and decimal commas',
      [
        'name;x;y;z;axis_x;axis_y;axis_z;charge;feed',
        ';mm;in;m;;;;g;',
        'a;700;12;1,100;1;-2;2;0,250;north',
        ';-701,5;0;0,95;0;0;1;;',
        '"c, ""spare""";5e1;-8,25;1;0,1;0,2;0;0;',
      ].join('\n'),
    ],
    [
      'with tabs, and its columns in another order',
      [
        'feed\tz\ty\tx\taxis_z\taxis_y\taxis_x\tname\tcharge',
        '\tm\tin\tmm\t\t\t\t\tmg',
        'north\t1.1\t12\t700\t2\t-2\t1\ta\t250',
        '\t0.95\t0\t-701.5\t1\t0\t0\t\t',
        '\t1\t-8.25\t50\t0\t0.2\t0.1\tc, "spare"\t0',
      ].join('\n'),
    ],
  ])('%s gives the plant of the same list in JSON', (_name, csv) => {
    expect(samplePlant({ arrangement: 'list', csv })).toEqual(fromJson);
  });

  test('gives the same from a file beside the design, in UTF-8 or one byte a character', () => {
    const text = COMMAS.join('\n').replace('north', 'Gerät');
    const expected = samplePlant({ arrangement: 'list', csv: text });
    const oneByte = Uint8Array.from(text, (character) => character.charCodeAt(0));
    for (const bytes of [new TextEncoder().encode(text), oneByte]) {
      const plant = samplePlant({ arrangement: 'list', file: 'list.csv' }, {}, {}, new Map([['list.csv', bytes]]));
      expect(plant).toEqual(expected);
    }
    expect(expected.filaments[0]?.feed).toBe('Gerät');
  });

  test('without an axis leaves that to the list', () => {
    const csv = 'x,y,z\nm,m,m\n0.7,0,1\n';
    expect(samplePlant({ arrangement: 'list', csv, axis: 'axial' }).filaments[0]?.coilAxis).toEqual([0, 0, 1]);
    expect(samplePlant({ arrangement: 'list', csv }).filaments[0]?.coilAxis).toEqual([-0, 1, 0]);
  });
});
