/** Fields of the wrong form: no unit, another dimension, a number out of range, an unknown word. */
import { edit, type BrokenDesign } from './brokenDesign.ts';

const LONG = 'n'.repeat(1000);

export const BROKEN_FIELDS: readonly BrokenDesign[] = [
  // quantities
  edit(
    'a bare number for a length',
    { 'tank.diameter': 3 },
    'tank.diameter',
    'with its unit, such as "2.6 m"; found 3',
  ),
  edit('a length without unit', { 'tank.diameter': '3' }, 'tank.diameter', 'the unit is missing'),
  edit('a mass for a length', { 'tank.depth': '2 kg' }, 'tank.depth', '"kg" is a unit of mass'),
  edit(
    'a length for a mass',
    { 'filamentTypes.coil.clipMass': '67 mm' },
    'filamentTypes.coil.clipMass',
    'unit of length',
  ),
  edit('a pressure for an angle', { 'witnesses[0].angle': '1 Pa' }, 'witnesses[0].angle', '"Pa" is a unit of pressure'),
  edit(
    'an unknown unit',
    { 'tank.depth': '2 furlong' },
    'tank.depth',
    'the unit "furlong" is unknown; known are m, km',
  ),
  edit('a word for a length', { 'tank.depth': 'deep' }, 'tank.depth', 'found "deep"'),
  edit('an empty length', { 'tank.depth': '' }, 'tank.depth', 'found ""'),
  edit('null for a length', { 'tank.depth': null }, 'tank.depth', 'found null'),
  edit('a list for a length', { 'tank.depth': ['2 m'] }, 'tank.depth', 'found ["2 m"]'),
  edit('an object for a length', { 'tank.depth': { m: 2 } }, 'tank.depth', 'found {"m":2}'),
  edit('"NaN m"', { 'tank.depth': 'NaN m' }, 'tank.depth', 'found "NaN m"'),
  edit('"Infinity m"', { 'tank.depth': 'Infinity m' }, 'tank.depth', 'found "Infinity m"'),
  edit('"1e999 m"', { 'tank.depth': '1e999 m' }, 'tank.depth', 'the number is too large'),
  edit('thousands or decimals', { 'tank.depth': '2,000 mm' }, 'tank.depth', 'could mean thousands or a decimal comma'),
  edit('a length of 100,000 digits', { 'tank.depth': `${'9'.repeat(100_000)} m` }, 'tank.depth', 'expected a length'),
  edit('a negative length', { 'tank.diameter': '-3 m' }, 'tank.diameter', 'greater than zero; found "-3 m"'),
  edit('a zero diameter', { 'mirror.outerDiameter': '0 m' }, 'mirror.outerDiameter', 'greater than zero'),
  edit('a negative hole', { 'mirror.holeDiameter': '-1 mm' }, 'mirror.holeDiameter', 'zero or more'),
  edit('a negative charge', { 'filaments[0].charge': '-1 g' }, 'filaments[0].charge', 'zero or more; found "-1 g"'),
  edit('a field missing', { 'mirror.outerDiameter': undefined }, 'mirror.outerDiameter', 'found nothing'),
  // vacuum and film
  edit('pressure zero', { 'vacuum.pressure': '0 mbar' }, 'vacuum.pressure', 'above zero and at most atmospheric'),
  edit('pressure negative', { 'vacuum.pressure': '-3 mbar' }, 'vacuum.pressure', 'found "-3 mbar"'),
  edit('pressure above atmospheric', { 'vacuum.pressure': '2 bar' }, 'vacuum.pressure', 'at most atmospheric'),
  edit('below absolute zero', { 'vacuum.temperature': '-300 degC' }, 'vacuum.temperature', 'above absolute zero'),
  edit('below absolute zero, °F', { 'vacuum.temperature': '-500 degF' }, 'vacuum.temperature', 'above absolute zero'),
  edit('an unknown gas', { 'vacuum.gas': 'neon' }, 'vacuum.gas', 'expected one of "air", "N2"'),
  edit('tolerance zero', { 'film.tolerance': '0 %' }, 'film.tolerance', 'above 0 % and at most 100 %'),
  edit('tolerance 150 %', { 'film.tolerance': '150 %' }, 'film.tolerance', 'at most 100 %; found "150 %"'),
  edit('target zero', { 'film.target': '0 nm' }, 'film.target', 'above zero and at most 0.1 mm'),
  edit('target of a metre', { 'film.target': '1 m' }, 'film.target', 'at most 0.1 mm; found "1 m"'),
  edit('density zero', { 'film.density': '0 kg/m3' }, 'film.density', 'from 100 to 30000 kg/m3'),
  edit('sticking zero', { 'film.sticking': '0 %' }, 'film.sticking', 'above 0 %'),
  // numbers and words
  edit('a string for a plain number', { 'mirror.conicConstant': '-1' }, 'mirror.conicConstant', 'plain number'),
  edit('10 million filaments', { 'filaments[0].count': 1e7 }, 'filaments[0].count', 'from 1 to 5000; found 10000000'),
  edit(
    'half a filament',
    { 'filaments[0].count': 1.5 },
    'filaments[0].count',
    'whole number from 1 to 5000; found 1.5',
  ),
  edit('no filaments on a ring', { 'filaments[0].count': 0 }, 'filaments[0].count', 'from 1 to 5000; found 0'),
  edit('loops zero', { 'filamentTypes.coil.loops': 0 }, 'filamentTypes.coil.loops', 'from 1 to 200; found 0'),
  edit('an odd aspheric power', { 'mirror.aspheric[0].power': 5 }, 'mirror.aspheric[0].power', 'even power'),
  edit(
    'an aspheric coefficient in inches',
    coefficient('1e-6 in^-3'),
    'mirror.aspheric[0].coefficient',
    'm^-3 or mm^-3',
  ),
  edit(
    'an aspheric unit of another power',
    coefficient('1e-6 m^-5'),
    'mirror.aspheric[0].coefficient',
    'm^-3 or mm^-3',
  ),
  edit('a bare aspheric coefficient', coefficient(1e-6), 'mirror.aspheric[0].coefficient', 'with its unit'),
  edit('an infinite aspheric coefficient', coefficient('1e999 m^-3'), 'mirror.aspheric[0].coefficient', 'too large'),
  edit('radius of curvature zero', { 'mirror.radiusOfCurvature': '0 m' }, 'mirror.radiusOfCurvature', 'or "flat"'),
  edit('radius of curvature "plane"', { 'mirror.radiusOfCurvature': 'plane' }, 'mirror.radiusOfCurvature', '"flat"'),
  edit('an unknown facing', { 'mirror.facing': 'left' }, 'mirror.facing', 'expected "down", "up" or { "sideways"'),
  edit('sideways without unit', { 'mirror.facing': { sideways: '30' } }, 'mirror.facing.sideways', 'unit is missing'),
  edit('an unknown outline', { 'mirror.outline': 'square' }, 'mirror.outline', '"round", "hexagon"; found "square"'),
  edit('an unknown law', law('cosine'), 'filamentTypes.boat.emission.law', 'expected an emission law'),
  edit(
    'an unknown shape',
    { 'obstacles[0].shape': 'cyl' },
    'obstacles[0].shape',
    '"annulus", "sphere" or "mesh"; found "cyl"',
  ),
  edit(
    'an unknown arrangement',
    { 'filaments[0].arrangement': 'circle' },
    'filaments[0].arrangement',
    'found "circle"',
  ),
  edit(
    'an arrangement missing',
    { 'filaments[0].arrangement': undefined },
    'filaments[0].arrangement',
    'found nothing',
  ),
  edit('an axis of zero', { 'filaments[0].axis': [0, 0, 0] }, 'filaments[0].axis', 'not zero; found [0,0,0]'),
  edit('an unknown axis', { 'filaments[0].axis': 'sideways' }, 'filaments[0].axis', '"tangential", "radial", "axial"'),
  edit(
    'an axis of two numbers',
    { 'filaments[0].axis': [0, 1] },
    'filaments[0].axis',
    'three numbers, such as [0, 0, 1]',
  ),
  edit('an axis with a unit', { 'filaments[0].axis': [0, 0, '1 m'] }, 'filaments[0].axis[2]', 'plain number'),
  edit('a normal of zero', { 'witnesses[1].normal': [0, 0, 0] }, 'witnesses[1].normal', 'not zero'),
  edit('an aim of zero', aim([0, 0, 0]), 'filamentTypes.boat.shield.direction', 'not zero'),
  edit('an unknown aim', aim('north'), 'filamentTypes.boat.shield.direction', '"toward mirror"'),
  edit('a point of two', { 'obstacles[1].center': ['0 m', '0 m'] }, 'obstacles[1].center', 'three lengths'),
  edit('a point of bare numbers', { 'obstacles[1].center': [0, 0, 1.5] }, 'obstacles[1].center[2]', 'with its unit'),
  edit(
    'out of use "yes"',
    { 'filaments[0].exceptions[0].outOfUse': 'yes' },
    'filaments[0].exceptions[0].outOfUse',
    'true or false',
  ),
  // names
  edit('an empty name', { name: '' }, 'name', '1 to 80 characters; found ""'),
  edit('a blank name', { 'witnesses[0].name': '   ' }, 'witnesses[0].name', '1 to 80 characters'),
  edit(
    'a name of 1000 characters',
    { 'filaments[0].name': LONG },
    'filaments[0].name',
    '1 to 80 characters; found "nnn',
  ),
  edit('a number for a name', { 'obstacles[0].name': 7 }, 'obstacles[0].name', '1 to 80 characters; found 7'),
  edit(
    'a type without name',
    { filamentTypes: { '': { emission: { law: 'isotropic' } } } },
    'filamentTypes[""]',
    '1 to 80 characters',
  ),
  edit('a story too long', { story: 's'.repeat(5000) }, 'story', 'at most 4000 characters'),
  // the wrong kind of thing
  edit('a string for a mirror', { mirror: '2 m' }, 'mirror', 'expected a mirror; found "2 m"'),
  edit('a list for a tank', { tank: [] }, 'tank', 'expected a tank; found []'),
  edit('no mirror', { mirror: undefined }, 'mirror', 'expected a mirror; found nothing'),
  edit('an object for filaments', { filaments: {} }, 'filaments', 'expected a list of filament sets; found {}'),
  edit(
    'a list for filament types',
    { filamentTypes: [] },
    'filamentTypes',
    'expected filament types by name; found []',
  ),
  edit('null for obstacles', { obstacles: null }, 'obstacles', 'expected a list of obstacles; found null'),
  edit('a string for a witness', { 'witnesses[0]': 'W1' }, 'witnesses[0]', 'expected a witness; found "W1"'),
  edit('null for a filament set', { 'filaments[0]': null }, 'filaments[0]', 'expected an arrangement'),
  edit(
    'a string for an emission',
    { 'filamentTypes.coil.emission': 'open coil' },
    'filamentTypes.coil.emission',
    'expected an emission',
  ),
  edit('201 filament sets', { filaments: Array.from({ length: 201 }, () => 1) }, 'filaments', 'at most 200'),
  edit('100,000 obstacles', { obstacles: Array.from({ length: 100_000 }, () => 1) }, 'obstacles', 'at most 500'),
  // unknown keys, with the nearest known one
  edit('unknown key, top', { obstacle: [] }, '', 'unknown key "obstacle": did you mean "obstacles"?'),
  edit('unknown key, mirror', { 'mirror.holeDiametre': '1 m' }, 'mirror', 'did you mean "holeDiameter"?'),
  edit(
    'unknown key, clear aperture',
    { 'mirror.clearAperture.inner': '1 m' },
    'mirror.clearAperture',
    'known are innerDiameter',
  ),
  edit('unknown key, aspheric', { 'mirror.aspheric[0].powr': 4 }, 'mirror.aspheric[0]', 'did you mean "power"?'),
  edit('unknown key, tank', { 'tank.Depth': '2 m' }, 'tank', 'did you mean "depth"?'),
  edit('unknown key, type', { 'filamentTypes.coil.loop': 4 }, 'filamentTypes.coil', 'did you mean "loops"?'),
  edit(
    'unknown key, wire',
    { 'filamentTypes.coil.wire.strand': 3 },
    'filamentTypes.coil.wire',
    'did you mean "strands"?',
  ),
  edit(
    'unknown key, emission',
    { 'filamentTypes.coil.emission.power': 1 },
    'filamentTypes.coil.emission',
    'unknown key "power"',
  ),
  edit(
    'unknown key, shield',
    { 'filamentTypes.boat.shield.angle': '1 deg' },
    'filamentTypes.boat.shield',
    'unknown key "angle"',
  ),
  edit('unknown key, ring', { 'filaments[0].diamter': '2 m' }, 'filaments[0]', 'did you mean "diameter"?'),
  edit('unknown key, line', { 'filaments[1].form': [] }, 'filaments[1]', 'did you mean "from"?'),
  edit('unknown key, grid', { 'filaments[2].colums': 2 }, 'filaments[2]', 'did you mean "columns"?'),
  edit(
    'unknown key, listed filament',
    { 'filaments[3].filaments[0].pos': [] },
    'filaments[3].filaments[0]',
    'unknown key "pos"',
  ),
  edit(
    'unknown key, exception',
    { 'filaments[0].exceptions[0].outOfuse': true },
    'filaments[0].exceptions[0]',
    '"outOfUse"',
  ),
  edit('unknown key, obstacle', { 'obstacles[0].diametr': '1 m' }, 'obstacles[0]', 'did you mean "diameter"?'),
  edit('unknown key, witness', { 'witnesses[0].radios': '1 m' }, 'witnesses[0]', 'did you mean "radius"?'),
  edit('unknown key, vacuum', { 'vacuum.presure': '1 Pa' }, 'vacuum', 'did you mean "pressure"?'),
  edit('unknown key, film', { 'film.targets': '1 nm' }, 'film', 'did you mean "target"?'),
];

function coefficient(value: unknown): Record<string, unknown> {
  return { 'mirror.aspheric[0].coefficient': value };
}

function law(value: string): Record<string, unknown> {
  return { 'filamentTypes.boat.emission.law': value };
}

function aim(value: unknown): Record<string, unknown> {
  return { 'filamentTypes.boat.shield.direction': value };
}
