/** Designs whose fields are sound and whose parts do not fit together. */
import { edit, type BrokenDesign } from './brokenDesign.ts';

const point = (x: number, y: number, z: number): string[] => [`${x} m`, `${y} m`, `${z} m`];
const listed = (position: string[]): Record<string, unknown> => ({ 'filaments[3].filaments[1].position': position });

export const BROKEN_PLANTS: readonly BrokenDesign[] = [
  // mirror
  edit(
    'a hole larger than the mirror',
    { 'mirror.holeDiameter': '2.1 m' },
    'mirror.holeDiameter',
    'smaller than the glass (2 m); found 2.1 m',
  ),
  edit(
    'an aperture larger than the glass',
    aperture('0.5 m', '2.5 m'),
    'mirror.clearAperture.outerDiameter',
    'outer diameter of the glass (2 m); found 2.5 m',
  ),
  edit('an aperture inside out', aperture('1.9 m', '0.6 m'), 'mirror.clearAperture', 'found 1.9 m and 0.6 m'),
  edit('an aperture within the hole', aperture('0.1 m', '0.3 m'), 'mirror.clearAperture', 'smaller than the outer one'),
  edit(
    'a sphere too small for its rim',
    { 'mirror.radiusOfCurvature': '0.9 m', 'mirror.conicConstant': 0 },
    'mirror.radiusOfCurvature',
    'reaches the rim at 1 m; this one ends at 0.9 m',
  ),
  edit(
    'an off-axis piece beyond the sphere',
    { 'mirror.radiusOfCurvature': '5 m', 'mirror.conicConstant': 0, 'mirror.offAxisDistance': '4.5 m' },
    'mirror.radiusOfCurvature',
    'reaches the rim at 5.5 m',
  ),
  // tank
  edit(
    'a tank narrower than the mirror',
    { 'tank.diameter': '1.9 m' },
    'tank.diameter',
    'wider than the glass (2 m); found 1.9 m',
  ),
  edit('a tank too shallow', { 'tank.depth': '0.1 m' }, 'tank.depth', 'deeper than the glass'),
  edit(
    'an end wall within the glass',
    { 'tank.behindMirror': '10 mm' },
    'tank.behindMirror',
    'where the glass ends; found 0.01 m',
  ),
  // filament types
  edit(
    'clips for three of four loops',
    { 'filamentTypes.coil.clipsPerLoop': [1, 1, 1] },
    'filamentTypes.coil.clipsPerLoop',
    'each of the 4 loops; found 3',
  ),
  edit(
    'half a clip',
    { 'filamentTypes.coil.clipsPerLoop': [1, 1.5, 1, 1] },
    'filamentTypes.coil.clipsPerLoop[1]',
    'found 1.5',
  ),
  edit(
    'clips in words',
    { 'filamentTypes.coil.clipsPerLoop': 'two' },
    'filamentTypes.coil.clipsPerLoop',
    'list with one number for each loop',
  ),
  edit(
    'tilt and direction both',
    { 'filamentTypes.boat.emission.direction': 'toward mirror' },
    'filamentTypes.boat.emission.tilt',
    'either "tilt" or "direction"',
  ),
  edit(
    'a bent wire with another law',
    { 'filamentTypes.hairpin.emission.law': 'open coil' },
    'filamentTypes.hairpin.emission.law',
    '"straight wire"; found "open coil"',
  ),
  edit(
    'a bent wire with loops',
    { 'filamentTypes.hairpin.loops': 3 },
    'filamentTypes.hairpin.loops',
    'has no loops; remove them',
  ),
  edit(
    'a repeated corner',
    { 'filamentTypes.hairpin.path[1]': ['-20 mm', '0 mm', '0 mm'] },
    'filamentTypes.hairpin.path[1]',
    'different from the one before',
  ),
  edit(
    'a wire of one corner',
    { 'filamentTypes.hairpin.path': [['0 m', '0 m', '0 m']] },
    'filamentTypes.hairpin.path',
    '2 to 500 corners; found 1',
  ),
  edit(
    'a cone without half angle',
    { 'filamentTypes.boat.shield.halfAngle': undefined },
    'filamentTypes.boat.shield.halfAngle',
    'found nothing',
  ),
  edit(
    'a half-space with half angle',
    { 'filamentTypes.boat.shield.removes': 'half-space' },
    'filamentTypes.boat.shield.halfAngle',
    'remove it',
  ),
  edit(
    'angles that fall',
    table({ angles: ['0 deg', '60 deg', '45 deg'] }),
    'filamentTypes.measured.emission.angles[2]',
    'rise',
  ),
  edit(
    'angles beyond 180 deg',
    table({ angles: ['0 deg', '45 deg', '200 deg'] }),
    'filamentTypes.measured.emission.angles[2]',
    'from 0 to 180 deg',
  ),
  edit(
    'more angles than intensities',
    table({ intensities: [1, 0.5] }),
    'filamentTypes.measured.emission.intensities',
    'as many intensities as angles (3); found 2',
  ),
  edit(
    'intensities all zero',
    table({ intensities: [0, 0, 0] }),
    'filamentTypes.measured.emission.intensities',
    'above zero',
  ),
  edit(
    'a table of one angle',
    table({ angles: ['0 deg'], intensities: [1] }),
    'filamentTypes.measured.emission.angles',
    '2 to 2000 angles; found 1',
  ),
  // sets
  edit('an unknown type', { 'filaments[0].type': 'coli' }, 'filaments[0].type', 'found "coli": did you mean "coil"?'),
  edit('no types at all', { filamentTypes: {} }, 'filaments[0].type', 'there are none'),
  edit('a type named like a method', { 'filaments[0].type': 'toString' }, 'filaments[0].type', 'found "toString"'),
  edit('a set name twice', { 'filaments[1].name': 'outer' }, 'filaments[1].name', 'taken by filaments[0]'),
  edit('an obstacle name twice', { 'obstacles[2].name': 'plug' }, 'obstacles[2].name', 'taken by obstacles[0]'),
  edit('a witness name twice', { 'witnesses[1].name': 'W1' }, 'witnesses[1].name', 'taken by witnesses[0]'),
  edit(
    'an exception out of range',
    exceptions([{ filament: 13 }]),
    'filaments[0].exceptions[0].filament',
    'from 1 to 12; found 13',
  ),
  edit(
    'an exception twice',
    exceptions([{ filament: 2 }, { filament: 2 }]),
    'filaments[0].exceptions[1].filament',
    'already has an exception',
  ),
  edit('filament 0', exceptions([{ filament: 0 }]), 'filaments[0].exceptions[0].filament', 'found 0'),
  edit(
    'more feeds than filaments',
    { 'filaments[0].feeds': 20 },
    'filaments[0].feeds',
    'at most 12, one for each filament; found 20',
  ),
  edit('no charge anywhere', { 'filamentTypes.boat.charge': undefined }, 'filaments[1].charge', 'such as "0.27 g"'),
  edit(
    'too many filaments together',
    { 'filaments[0].count': 4000, 'filaments[1].count': 4000 },
    'filaments',
    'at most 5000 filaments in all; found 8006',
  ),
  edit(
    'a grid of 25 million',
    { 'filaments[2].columns': 5000, 'filaments[2].rows': 5000 },
    'filaments',
    'at most 5000 filaments in all; found 25000017',
  ),
  edit(
    'too many loops together',
    { 'filamentTypes.coil': { loops: 200, charge: '1 g', emission: { law: 'open coil' } }, 'filaments[0].count': 4000 },
    'filaments',
    'loops and pieces of wire in all; found 800039',
  ),
  edit(
    'too many wire pieces together',
    { 'filamentTypes.hairpin.path': zigzag(500), 'filaments[0].type': 'hairpin', 'filaments[0].count': 4000 },
    'filaments',
    'pieces of wire in all',
  ),
  edit(
    'both filaments and csv',
    { 'filaments[3].csv': 'x,y,z\nm,m,m\n0,0,1' },
    'filaments[3]',
    'found "filaments" and "csv"',
  ),
  edit('neither filaments nor csv', { 'filaments[3].filaments': undefined }, 'filaments[3]', 'found none'),
  // positions
  edit('a ring outside the tank', { 'filaments[0].diameter': '3.2 m' }, 'filaments[0].diameter', 'is outside the tank'),
  edit('a ring above the tank', { 'filaments[0].height': '5 m' }, 'filaments[0].height', 'is outside the tank'),
  edit(
    'a ring within the glass',
    { 'filaments[0].diameter': '1.6 m', 'filaments[0].height': '20 mm' },
    'filaments[0].height',
    'inside the glass',
  ),
  edit(
    'a ring within an obstacle',
    { 'filaments[0].diameter': '10 mm', 'filaments[0].height': '0.2 m' },
    'filaments[0]',
    'inside the obstacle "plug" (and 11 more filaments)',
  ),
  edit(
    'a listed filament outside the tank',
    listed(point(-1.6, 0, 1)),
    'filaments[3].filaments[1].position',
    'outside the tank',
  ),
  edit(
    'a listed filament inside the glass',
    listed(point(-0.5, 0, 0)),
    'filaments[3].filaments[1].position',
    'inside the glass',
  ),
  edit(
    'a listed filament in a beam',
    listed(point(0.2, 0, 1.5)),
    'filaments[3].filaments[1].position',
    'inside the obstacle "beam"',
  ),
  edit(
    'a position of 1e300 m',
    listed(['1e300 m', '0 m', '1 m']),
    'filaments[3].filaments[1].position',
    'outside the tank',
  ),
  edit(
    'a line through the wall',
    { 'filaments[1].to': point(2, 0.5, 1) },
    'filaments[1]',
    'filament 3 reaches (2, 0.5, 1) m, which is outside the tank',
  ),
  edit(
    'a grid wider than the tank',
    { 'filaments[2].spacing': ['4 m', '0.2 m'] },
    'filaments[2]',
    '(and 3 more filaments)',
  ),
  // obstacles
  edit('a cylinder of no length', { 'obstacles[0].to': point(0, 0, 0.1) }, 'obstacles[0].to', 'different from "from"'),
  edit(
    'an annulus inside out',
    { 'obstacles[2].innerDiameter': '2.9 m' },
    'obstacles[2].innerDiameter',
    'less than the outer diameter (2.8 m); found 2.9 m',
  ),
  edit(
    'a cone that is a line',
    {
      'obstacles[0]': {
        shape: 'cone frustum',
        name: 'tip',
        from: point(0, 0, 0.1),
        to: point(0, 0, 0.3),
        fromDiameter: '0 m',
        toDiameter: '0 m',
      },
    },
    'obstacles[0].toDiameter',
    'wider than zero',
  ),
  edit(
    'a baffle with a normal of zero',
    { 'obstacles[2].normal': [0, 0, 0] },
    'obstacles[2].normal',
    'not zero; found [0,0,0]',
  ),
  edit(
    'a beam far outside the tank',
    { 'obstacles[1].center': point(90, 0, 1) },
    'obstacles[1]',
    'lies about (90, 0, 1) m',
  ),
  edit(
    'a baffle below the tank',
    { 'obstacles[2].center': point(0, 0, -9), 'obstacles[2].normal': [0, 0, 1] },
    'obstacles[2]',
    'expected an obstacle inside the tank (radius 1.5 m, z from -0.298 m to 1.702 m)',
  ),
  // witnesses
  edit(
    'a free witness inside the glass',
    { 'witnesses[1].position': point(0.7, 0, 0) },
    'witnesses[1].position',
    'expected a place outside the glass',
  ),
  edit('a witness with both', { 'witnesses[0].position': point(1.2, 0, 0.2) }, 'witnesses[0]', 'found both'),
  edit(
    'a witness with neither',
    { 'witnesses[1].position': undefined },
    'witnesses[1]',
    'expected either "radius" and "angle", or "position"',
  ),
  edit('a witness without angle', { 'witnesses[0].angle': undefined }, 'witnesses[0].angle', 'found nothing'),
  edit(
    'a witness with radius and normal',
    { 'witnesses[0].normal': [0, 0, 1] },
    'witnesses[0].normal',
    'remove the normal',
  ),
  edit(
    'a witness beyond the tank',
    { 'witnesses[0].radius': '1.6 m' },
    'witnesses[0].radius',
    'inside the tank; found 1.6 m',
  ),
  edit(
    'a free witness beyond the tank',
    { 'witnesses[1].position': point(0, 0, 9) },
    'witnesses[1].position',
    'found (0, 0, 9) m',
  ),
];

function aperture(innerDiameter: string, outerDiameter: string): Record<string, unknown> {
  return { 'mirror.clearAperture': { innerDiameter, outerDiameter } };
}

function table(values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]) => [`filamentTypes.measured.emission.${key}`, value]),
  );
}

function exceptions(value: unknown): Record<string, unknown> {
  return { 'filaments[0].exceptions': value };
}

function zigzag(corners: number): string[][] {
  return Array.from({ length: corners }, (_, i) => [`${i / 100} mm`, `${i % 2} mm`, '0 mm']);
}
