/** One valid design with at least one of everything, and small edits of it. */

type Json = Record<string, unknown>;

/** A fresh copy; its numbers are invented. */
export function baseDesign(): Json {
  return {
    format: 'evenfall',
    version: 1,
    name: 'Heron Tarn 2 m, bench',
    story: 'A plant for tests.',
    mirror: {
      radiusOfCurvature: '10 m',
      conicConstant: -1,
      aspheric: [{ power: 4, coefficient: '1e-6 m^-3' }],
      outerDiameter: '2 m',
      holeDiameter: '0.4 m',
      clearAperture: { innerDiameter: '0.5 m', outerDiameter: '1.96 m' },
      facing: 'down',
    },
    tank: { diameter: '3 m', depth: '2 m' },
    filamentTypes: {
      coil: {
        loops: 4,
        length: '64 mm',
        wire: { diameter: '0.5 mm', strands: 3 },
        clipMass: '67 mg',
        clipsPerLoop: [1, 2, 2, 1],
        emission: { law: 'open coil' },
      },
      boat: {
        charge: '0.5 g',
        emission: { law: 'cosine power', power: 1, tilt: '10 deg' },
        shield: { removes: 'cone', direction: 'outward', halfAngle: '30 deg' },
      },
      hairpin: {
        charge: '0.4 g',
        path: [
          ['-20 mm', '0 mm', '0 mm'],
          ['0 mm', '0 mm', '-20 mm'],
          ['20 mm', '0 mm', '0 mm'],
        ],
        emission: { law: 'straight wire' },
      },
      measured: {
        charge: '0.3 g',
        emission: { law: 'table', angles: ['0 deg', '45 deg', '90 deg'], intensities: [1, 0.7, 0] },
      },
    },
    filaments: [
      {
        arrangement: 'ring',
        name: 'outer',
        type: 'coil',
        count: 12,
        diameter: '2.4 m',
        height: '0.8 m',
        feeds: 3,
        exceptions: [{ filament: 2, charge: '0.5 g' }],
      },
      {
        arrangement: 'line',
        name: 'row',
        type: 'boat',
        count: 3,
        from: ['-0.3 m', '0.5 m', '1 m'],
        to: ['0.3 m', '0.5 m', '1 m'],
      },
      {
        arrangement: 'grid',
        name: 'field',
        type: 'measured',
        columns: 2,
        rows: 2,
        spacing: ['0.2 m', '0.2 m'],
        center: ['0 m', '-0.5 m', '1 m'],
      },
      {
        arrangement: 'list',
        name: 'extra',
        type: 'hairpin',
        filaments: [
          { name: 'a', position: ['0.9 m', '0.1 m', '1.1 m'], axis: 'radial', charge: '0.2 g', feed: 'spare' },
          { name: 'b', position: ['-0.9 m', '0.1 m', '1.1 m'] },
        ],
      },
    ],
    obstacles: [
      {
        shape: 'cylinder',
        name: 'plug',
        from: ['0 m', '0 m', '0.1 m'],
        to: ['0 m', '0 m', '0.3 m'],
        diameter: '0.3 m',
      },
      { shape: 'box', name: 'beam', center: ['0 m', '0 m', '1.5 m'], size: ['1 m', '0.1 m', '0.1 m'] },
      {
        shape: 'annulus',
        name: 'baffle',
        center: ['0 m', '0 m', '0.3 m'],
        normal: [0, 0, 1],
        innerDiameter: '2.5 m',
        outerDiameter: '2.8 m',
      },
    ],
    witnesses: [
      { name: 'W1', radius: '0.4 m', angle: '0 deg' },
      { name: 'W2', position: ['1.2 m', '0 m', '0.2 m'], normal: [0, 0, 1] },
    ],
    vacuum: { pressure: '1e-5 mbar', gas: 'air', temperature: '20 degC' },
    film: { target: '100 nm', tolerance: '10 %', density: '2700 kg/m3', sticking: '100 %' },
  };
}

/** Values by path, such as { 'filaments[0].count': 5 }; undefined removes the key. */
export type Edits = Readonly<Record<string, unknown>>;

/** The base design with edits, each of which must point at a place whose parent exists. */
export function editedDesign(edits: Edits): Json {
  const design = baseDesign();
  for (const [path, value] of Object.entries(edits)) {
    const keys = path.split(/[.[\]]+/).filter((key) => key !== '');
    const last = keys.pop();
    let parent: unknown = design;
    for (const key of keys) parent = (parent as Json)[key];
    if (last === undefined || typeof parent !== 'object' || parent === null)
      throw new Error(`the base design has no place ${path}`);
    if (value === undefined) Reflect.deleteProperty(parent, last);
    else Reflect.set(parent, last, value);
  }
  return design;
}
