/** Texts that are no design: broken JSON, hostile JSON, the wrong kind of file. */
import { baseDesign } from './baseDesign.ts';
import { edit, rewrite, whole, type BrokenDesign } from './brokenDesign.ts';

const MEGABYTE = 1_000_000;
const base = (): string => JSON.stringify(baseDesign(), null, 2);

/** Brackets that a string left open hides from a careless count. */
const hiddenDepth = (): string => `["\n,${'['.repeat(100_000)}`;

export const BROKEN_TEXTS: readonly BrokenDesign[] = [
  whole('an empty file', () => '', '', 'the file is empty'),
  whole('blanks only', () => ' \n\t\n', '', 'the file is empty'),
  whole('50 MB of spaces', () => ' '.repeat(50 * MEGABYTE), '', 'found 50.0 million'),
  whole('truncated JSON', () => base().slice(0, 700), '', 'expected JSON'),
  whole('no JSON at all', () => 'radius of curvature: 10 m', '', 'line 1, column 1'),
  whole('rubbish, 6 MB', () => 'x '.repeat(3 * MEGABYTE), '', 'line 1, column 1'),
  whole('100,000 brackets', () => '['.repeat(100_000), '', 'levels of nesting; found 100000'),
  whole('100,000 brackets behind an open string', hiddenDepth, '', 'expected JSON'),
  whole('closed before opened', () => ']'.repeat(100_000) + '['.repeat(100_000), '', 'line 1, column 1'),
  whole('an array', () => '[1, 2]', '', 'expected a design, an object in braces; found [1,2]'),
  whole('a string', () => '"2.6 m"', '', 'expected a design, an object in braces; found "2.6 m"'),
  whole('null', () => 'null', '', 'expected a design, an object in braces; found null'),
  whole('a number', () => '12', '', 'expected a design, an object in braces; found 12'),
  whole('an empty object', () => '{}', 'version', 'expected version 1; found nothing'),
  rewrite('a comment in JSON', '"format"', '// ours\n  "format"', '', 'comment'),
  rewrite('a trailing comma', '"coefficient": "1e-6 m^-3"', '"coefficient": "1e-6 m^-3",', '', 'line 13'),
  rewrite('a bare NaN', '"conicConstant": -1', '"conicConstant": NaN', '', 'line 8, column 22'),
  rewrite('a bare Infinity', '"conicConstant": -1', '"conicConstant": Infinity', '', 'line 8, column 22'),
  rewrite('single quotes', '"air"', "'air'", '', 'expected JSON'),
  rewrite('1e999 bare', '"conicConstant": -1', '"conicConstant": 1e999', 'mirror.conicConstant', 'found Infinity'),
  rewrite('a key written twice', '"gas"', '"pressure": "1 mbar", "gas"', 'vacuum.pressure', 'twice'),
  rewrite('a key written twice, once escaped', '"gas"', '"\\u0067as": "Ar", "gas"', 'vacuum.gas', 'twice'),
  rewrite('the key __proto__', '"gas"', '"__proto__": {}, "gas"', 'vacuum.__proto__', 'not allowed'),
  rewrite('the key __proto__, escaped', '"gas"', '"\\u005f_proto__": {}, "gas"', 'vacuum.__proto__', 'not allowed'),
  rewrite('the key constructor', '"coil"', '"constructor": {}, "coil"', 'filamentTypes.constructor', 'not allowed'),
  whole('a key 100,000 times', () => `{${'"a":1,'.repeat(100_000)}"b":1}`, 'a', 'twice'),
  whole('300,000 unknown keys', manyKeys, '', 'unknown key "k0"'),
  edit('version 2', { version: 2 }, 'version', 'found 2 (written by a newer Evenfall?)'),
  edit('version "1"', { version: '1' }, 'version', 'expected version 1; found "1"'),
  edit('version missing', { version: undefined }, 'version', 'found nothing'),
  edit('version −1', { version: -1 }, 'version', 'found -1'),
  edit('version 1.5', { version: 1.5 }, 'version', 'found 1.5'),
  edit('another format', { format: 'waterfall' }, 'format', 'expected "evenfall"; found "waterfall"'),
  edit('format missing', { format: undefined }, 'format', 'found nothing'),
];

function manyKeys(): string {
  const keys = Array.from({ length: 300_000 }, (_, i) => `"k${i}":1`);
  return base().replace('{', `{${keys.join(',')},`);
}
