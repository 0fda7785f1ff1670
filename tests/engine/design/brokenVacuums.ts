/** Vacuum and firing sections that must be refused. */
import { edit, type BrokenDesign } from './brokenDesign.ts';

const ROTARY = { name: 'rotary', kind: 'rotary', speed: '100 m3/h' };

/** The base design with a pumping system; `changes` replace its parts. */
const system = (name: string, changes: object, path: string, message: string): BrokenDesign =>
  edit(name, { 'vacuum.system': { pumps: [ROTARY], ...changes } }, `vacuum.system${path}`, message);
const pump = (name: string, changes: object, path: string, message: string): BrokenDesign =>
  system(name, { pumps: [{ ...ROTARY, ...changes }] }, `.pumps[0]${path}`, message);
const mixture = (name: string, gases: unknown, path: string, message: string): BrokenDesign =>
  edit(name, { 'vacuum.mixture': gases }, `vacuum.mixture${path}`, message);

export const BROKEN_VACUUMS: readonly BrokenDesign[] = [
  mixture('an empty mixture', [], '', 'expected a list of 1 to 7 gases'),
  mixture('an unknown gas in a mixture', [{ gas: 'Xe', share: '100 %' }], '[0].gas', 'expected one of "air"'),
  mixture('a mixture of 90 %', [{ gas: 'N2', share: '90 %' }], '', 'add up to 100 %; found 90 %'),
  mixture('a share without unit', [{ gas: 'N2', share: 1 }], '[0].share', 'expected a share with its unit'),
  mixture(
    'a gas twice in a mixture',
    [
      { gas: 'N2', share: '50 %' },
      { gas: 'N2', share: '50 %' },
    ],
    '[1].gas',
    '"N2" stands in [0] already',
  ),
  system('a system without pumps', { pumps: [] }, '.pumps', 'expected a list of 1 to 40 pumps; found 0'),
  system('a misspelt key of a system', { leek: '1 sccm' }, '', 'unknown key "leek": did you mean "leak"?'),
  system('a negative leak', { leak: '-1 mbar l/s' }, '.leak', 'of zero or more'),
  system('a leak as a pressure', { leak: '1 mbar' }, '.leak', '"mbar" is a unit of pressure'),
  system('a bare number for a leak', { leak: 1e-3 }, '.leak', 'with its unit, such as "1e-3 mbar l/s"'),
  system('a volume of zero', { volume: '0 m3' }, '.volume', 'greater than zero'),
  system('a crossover at zero', { crossover: '0 mbar' }, '.crossover', 'above zero and at most atmospheric'),
  system('a crossover above atmosphere', { crossover: '3 bar' }, '.crossover', 'at most atmospheric; found "3 bar"'),
  pump('a pump of zero speed', { speed: '0 l/s' }, '.speed', 'greater than zero; found "0 l/s"'),
  pump('a pump of negative speed', { speed: '-5 l/s' }, '.speed', 'greater than zero'),
  pump('a speed as a flow of gas', { speed: '5 sccm' }, '.speed', '"sccm" is a unit of gas flow'),
  pump('an unknown kind of pump', { kind: 'syringe' }, '.kind', 'expected one of "rotary", "roots"'),
  pump('no pumps of a kind', { count: 0 }, '.count', 'from 1 to 100; found 0'),
  pump('a pump that closes before it opens', { from: '1 mbar', until: '2 mbar' }, '.until', 'close before it opens'),
  pump('a curve of one point', { curve: [['1 mbar', '5 l/s']] }, '.curve', 'expected a list of 2 to 60 pairs'),
  pump(
    'a curve that falls back',
    {
      curve: [
        ['1 mbar', '5 l/s'],
        ['0.1 mbar', '5 l/s'],
      ],
    },
    '.curve[1][0]',
    'in rising order',
  ),
  pump(
    'a curve that never pumps',
    {
      curve: [
        ['1 mbar', '0 l/s'],
        ['10 mbar', '0 l/s'],
      ],
    },
    '.curve',
    'above zero at some pressure',
  ),
  pump('a point that is no pair', { curve: [['1 mbar'], ['2 mbar', '1 l/s']] }, '.curve[0]', 'and a speed, such as'),
  pump('an unknown part of a line', { line: [{ part: 'funnel' }] }, '.line[0].part', '"aperture", "tube", "bend" or'),
  pump('a tube without length', { line: [{ part: 'tube', diameter: '5 cm' }] }, '.line[0].length', 'found nothing'),
  pump(
    'a bend of a full turn',
    { line: [{ part: 'bend', diameter: '5 cm', angle: '360 deg' }] },
    '.line[0].angle',
    '180',
  ),
  pump(
    'a baffle of 150 %',
    { line: [{ part: 'baffle', diameter: '5 cm', transmission: '150 %' }] },
    '.line[0].transmission',
    'at most 100 %',
  ),
  system('two pumps of one name', { pumps: [ROTARY, ROTARY] }, '.pumps[1].name', 'the name "rotary" is taken by [0]'),
  system(
    'nothing that starts at atmosphere',
    { pumps: [{ ...ROTARY, from: '10 mbar' }] },
    '.pumps',
    'starts at atmospheric pressure',
  ),
  system(
    'a Roots pump alone',
    { pumps: [{ name: 'blower', kind: 'roots', speed: '300 l/s', from: '1013.25 mbar' }] },
    '.pumps[0].kind',
    'expected a rotary pump beside a Roots pump',
  ),
  system('an unknown material', { surfaces: [{ material: 'cheese' }] }, '.surfaces[0].material', '"stainless steel"'),
  system('a surface of no area', { surfaces: [{ material: 'glass', area: '0 m2' }] }, '.surfaces[0].area', 'than zero'),
  system(
    'two surfaces for the wall',
    { surfaces: [{ material: 'mild steel' }, { material: 'aluminium' }] },
    '.surfaces[1].area',
    "stands for the tank's inner wall already",
  ),
  system(
    'an exponent without rate',
    { surfaces: [{ material: 'glass', area: '1 m2', exponent: 1 }] },
    '.surfaces[0].exponent',
    'expected a "rate" beside it',
  ),
  system('a tank open for -1 h', { venting: { open: '-1 h' } }, '.venting.open', 'from zero to a year'),
  system('a vent with steam', { venting: { air: 'steam' } }, '.venting.air', 'expected one of "humid", "dry"'),
  system('a trap of two sizes', { coldTrap: { area: '1 m2', waterSpeed: '1 m3/s' } }, '.coldTrap', 'found both'),
  system('a trap of no size', { coldTrap: {} }, '.coldTrap', 'found none'),
  system('a glow of no current', { glow: { current: '0 mA' } }, '.glow.current', 'above zero and at most 1 kA'),
  system('a glow at atmosphere', { glow: { pressure: '1 bar' } }, '.glow.pressure', 'at most 10 mbar'),
  system('a glow in neon', { glow: { gas: 'Ne' } }, '.glow.gas', 'expected one of "air", "O2", "Ar"'),
  edit(
    'a film that grows in no time',
    { firing: { duration: '0 s' } },
    'firing.duration',
    'above zero and at most a day',
  ),
  edit('a growth time without unit', { firing: { duration: 60 } }, 'firing.duration', 'such as "15 min"; found 60'),
  edit('a misspelt key of the firing', { firing: { durration: '60 s' } }, 'firing', 'did you mean "duration"?'),
];
