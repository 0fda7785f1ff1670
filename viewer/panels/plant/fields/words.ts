/** Labels and help that the schema's keys and descriptions do not give by themselves. */

/** "outerDiameter" → "Outer diameter". */
export function labelOf(key: string): string {
  const words = key.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Labels where the key alone would not do, by place or by key. */
export const LABELS: Readonly<Record<string, string>> = {
  center: 'Middle',
  'mirror.aspheric': 'Aspheric terms',
  'mirror.offAxisDistance': 'Off-axis distance',
  'mirror.facing.sideways': 'Gravity at',
  'tank.behindMirror': 'Room behind the mirror',
  'set.filaments': 'Single filaments',
  'set.startAngle': 'Clock angle of filament 1',
  'set.csv': 'Table',
  'set.file': 'Table file',
  'type.path': 'Bent wire',
  'type.charge': 'Charge',
  'type.emission': 'Emission',
  'type.emission.law': 'Emission law',
  'type.emission.about': 'Angles from',
  'set.exceptions.outOfUse': 'Out of use',
  'set.exceptions.charge': 'Own charge',
  'obstacle.data': 'Mesh',
  'obstacle.file': 'Mesh file',
  'obstacle.unit': 'Unit of the mesh',
  'vacuum.system.pumps.speed': 'Rated speed',
  'vacuum.system.pumps.waterSpeed': 'Speed for water',
  'vacuum.system.pumps.ultimate': 'Ultimate pressure',
  'vacuum.system.pumps.from': 'Opens at',
  'vacuum.system.pumps.until': 'Closes at',
  'vacuum.system.pumps.curve': 'Speed curve',
  'vacuum.system.pumps.curve.x': 'Pressure',
  'vacuum.system.pumps.curve.y': 'Speed',
  'vacuum.system.coldTrap.waterSpeed': 'Speed for water',
  'vacuum.system.coldTrap.from': 'Cold from',
  'vacuum.system.venting.open': 'Stood open for',
  'vacuum.system.venting.air': 'Stood full of',
  'vacuum.system.glow': 'Glow discharge',
};

/** Help where the schema has no description, by place. */
export const HELP: Readonly<Record<string, string>> = {
  'mirror.aspheric': 'terms a·r^power that are added to the conic',
  'type.wire': 'the tungsten wire that the coil is wound from',
  'type.clipsPerLoop': 'clips of aluminium on each loop, even or counted loop by loop',
  'type.emission.law': 'the law by which the intensity depends on the direction',
  'type.emission.angles': 'angles from the axis, rising from one to the next',
  'type.emission.intensities': 'an intensity for each angle, in any unit',
  'type.shield': 'something beside the filament that takes away a part of the directions',
  'set.arrangement': 'how the filaments of the set stand: on a ring, a line, a grid, or one by one',
  'set.spacing': 'distances between neighbours along x and along y',
  'set.filaments': 'the filaments one by one',
  'set.exceptions.outOfUse': 'left out of the shot: it evaporates nothing',
  'set.type': 'the type that all filaments of the set are of',
  'obstacle.size.x': 'side along its own x',
  'obstacle.size.y': 'side along its own y',
  'obstacle.size.z': 'side along its own z',
  'obstacle.shape': 'the shape of the obstacle',
  'obstacle.size': 'its sides along its own x, y and z',
  'obstacle.rotation': 'turned about x, then y, then z',
};

/** Words of alternatives that the file does not hold as words, by place or by key. */
export const ALTERNATIVES: Readonly<Record<string, string>> = {
  axis: 'own direction',
  direction: 'own direction',
  'mirror.facing': 'sideways',
};

/** The entry of a table for a place, else for its last key. */
export function lookUp(table: Readonly<Record<string, string>>, place: string): string | undefined {
  return table[place] ?? table[place.slice(place.lastIndexOf('.') + 1)];
}
