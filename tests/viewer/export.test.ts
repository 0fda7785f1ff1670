import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { csvParse } from 'd3-dsv';
import { PNG } from 'pngjs';
import { Color, Mesh, Vector3, type BufferGeometry } from 'three';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Coat } from '../../engine/index.ts';
import { histogramSvg, profileSvg } from '../../viewer/export/chartFiles.ts';
import { coatScene } from '../../viewer/export/coatScene.ts';
import { exportGroups } from '../../viewer/export/exportActions.ts';
import { mapSvg } from '../../viewer/export/mapFile.ts';
import { tableCsv } from '../../viewer/export/tableFiles.ts';
import type { Units } from '../../viewer/state/units.ts';
import { colourAt } from '../../workers/picture/paint.ts';
import { shareOn } from '../../workers/picture/valueScale.ts';
import { coatOf, plantOf } from '../support/plants.ts';

/** A turn by −π/2 in double precision, m. */
const ROUNDING = 1e-12;
const UNITS: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const INCHES: Units = { ...UNITS, length: 'in', thickness: 'Å' };
const HOSTILE = `Tarn <script>alert(1)</script> & "Hill" 'x'`;

const RING = { arrangement: 'ring', type: 'four', axis: 'tangential' };
const plant = plantOf({
  name: HOSTILE,
  mirror: { radiusOfCurvature: '10 m', conicConstant: -1, outerDiameter: '2 m', holeDiameter: '0.4 m' },
  tank: { diameter: '4 m', depth: '3 m' },
  filamentTypes: {
    four: { loops: 4, length: '60 mm', clipMass: '60 mg', clipsPerLoop: 1, emission: { law: 'open coil' } },
  },
  filaments: [{ ...RING, name: '<outer>', count: 12, diameter: '2.2 m', height: '1 m' }],
  obstacles: [
    { shape: 'cylinder', name: 'plug', from: ['0 m', '0 m', '0.1 m'], to: ['0 m', '0 m', '0.3 m'], diameter: '0.3 m' },
  ],
  witnesses: [{ name: `W & <b>"1"`, radius: '0.5 m', angle: '0 deg' }],
});
const coat: Coat = await coatOf(plant, { points: 2000, rays: 1024, withArrival: true });
const bare: Coat = { ...coat, plant: { ...plant, witnesses: [] } };

/** Pixels by a Node library, as the page does by its canvas. */
const encode = (bytes: Uint8ClampedArray, size: number): string => {
  const png = new PNG({ width: size, height: size });
  png.data = Buffer.from(bytes);
  return `data:image/png;base64,${PNG.sync.write(png).toString('base64')}`;
};
const THICKNESS = { quantity: 'thickness', range: { mode: 'automatic' }, fromZero: false } as const;

describe('pictures', () => {
  beforeAll(async () => {
    const find = createRequire(import.meta.url).resolve;
    await initWasm(await readFile(find('@resvg/resvg-wasm/index_bg.wasm')));
  });

  const pictures = {
    map: mapSvg({ coat, view: THICKNESS, units: UNITS }, encode),
    'map in ångström and inches': mapSvg({ coat, view: THICKNESS, units: INCHES }, encode),
    'map of angles': mapSvg({ coat, view: { ...THICKNESS, quantity: 'incidence' }, units: UNITS }, encode),
    profile: profileSvg(coat, UNITS),
    histogram: histogramSvg(coat, UNITS),
  };

  test.each(Object.entries(pictures))('%s: well-formed, self-contained, without script', (_name, svg) => {
    // resvg refuses XML that is not well-formed
    expect(new Resvg(svg).render().asPng().length).toBeGreaterThan(1000);
    expect(svg).not.toMatch(/<script|<foreignObject|<style|\son\w+=/i);
    const references = [...svg.matchAll(/(?:href|src)="([^"]*)"/g)].map(([, address]) => address ?? '');
    for (const address of references) expect(address).toMatch(/^data:image\/png;base64,/);
    expect(svg.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
    expect(svg).toContain('Tarn &#60;script&#62;alert(1)&#60;/script&#62; &#38; &#34;Hill&#34; &#39;x&#39;');
  });

  test('say what they show: verdict, unit, marks', () => {
    expect(pictures.map).toContain('>Thinnest ');
    expect(pictures.map).toContain('>Thickness, nm</text>');
    expect(pictures.map).toMatch(/>thickest [\d.]+ nm</);
    expect(pictures.map).toContain('>W &#38; &#60;b&#62;&#34;1&#34;</text>');
    expect(pictures['map in ångström and inches']).toContain('>Thickness, Å</text>');
    expect(pictures['map in ångström and inches']).toMatch(/>\d+ in</);
    expect(pictures['map of angles']).toContain('>Mean incidence angle, °</text>');
    expect(pictures.profile).toContain('>Radius, m</text>');
    expect(pictures.histogram).toContain('>Share of the clear aperture, %</text>');
  });

  test('that need arrival angles are refused in words without them', () => {
    const request = {
      coat: { ...coat, arrival: null },
      view: { ...THICKNESS, quantity: 'grazing' },
      units: UNITS,
    } as const;
    expect(() => mapSvg(request, encode)).toThrow(/without arrival angles/);
  });

  test('another parser refuses a broken picture, so that the check can fail', () => {
    expect(() => new Resvg(pictures.map.replace('</svg>', ''))).toThrow();
  });
});

describe('tables', () => {
  test('have the columns and rows of the command line', () => {
    const thickness = csvParse(tableCsv('thickness', coat));
    expect(thickness.columns).toEqual(['x_m', 'y_m', 'z_m', 'thickness_nm', 'mean_incidence_deg']);
    expect(thickness).toHaveLength(coat.face.points.count);
    expect(Number(thickness[5]?.['thickness_nm'])).toBeCloseTo(coat.thickness[5]! * 1e9, 6);
    const profile = csvParse(tableCsv('radial-profile', coat));
    expect(profile.columns).toEqual(['radius_m', 'mean_nm', 'min_nm', 'max_nm']);
    expect(profile).toHaveLength(coat.profile.radius.length);
    const witnesses = csvParse(tableCsv('witnesses', coat));
    expect(witnesses.columns).toEqual(['name', 'x_m', 'y_m', 'z_m', 'thickness_nm', 'mean_incidence_deg']);
    expect(witnesses.map((row) => row['name'])).toEqual([`W & <b>"1"`]);
  });
});

describe('the scene', () => {
  const scale = { low: 40, high: 90, ticks: [40, 65, 90] };
  const values = coat.thickness.map((value) => value * 1e9);
  const scene = coatScene(coat, { values, scale, label: 'Thickness, nm' });
  const find = (name: string): Mesh => {
    const found = scene.getObjectByName(name);
    if (!(found instanceof Mesh)) throw new Error(`expected a mesh named ${name}`);
    return found;
  };

  test('names its parts', () => {
    expect(scene.name).toBe(HOSTILE);
    expect(scene.getObjectByName('Filaments')?.children.map(({ name }) => name)).toEqual(
      plant.filaments.map(({ name }) => `Filament ${name}`),
    );
    expect(find('Obstacle plug').geometry.getAttribute('position').count).toBeGreaterThan(20);
    expect(find(`Witness W & <b>"1"`).userData['thickness_nm']).toBeCloseTo(coat.witnessThickness[0]! * 1e9, 9);
  });

  test('colours the coat by its scale, in linear light', () => {
    const coated = find('Coat: Thickness, nm, colours from 40 to 90');
    const colours = (coated.geometry as BufferGeometry).getAttribute('color');
    expect(colours.count).toBe(coat.face.points.count);
    for (const i of [0, 17, 1000]) {
      const sRgb = new Color(colours.getX(i), colours.getY(i), colours.getZ(i)).getStyle();
      expect(sRgb.replaceAll(' ', '')).toBe(colourAt('even', shareOn(scale, values[i]!)).replaceAll(' ', ''));
    }
  });

  test('turns the mirror’s z into y, which is up in glTF 2.0 (section 3.4, coordinate system and units)', () => {
    scene.updateMatrixWorld(true);
    const filament = find(`Filament ${plant.filaments[0]!.name}`);
    const at = filament.getWorldPosition(new Vector3());
    const [x, y, z] = plant.filaments[0]!.center;
    expect(at.distanceTo(new Vector3(x, z, -y))).toBeLessThan(ROUNDING);
  });
});

describe('the menu', () => {
  test('offers each file once, and no table of witnesses without witnesses', () => {
    const names = (of: Coat): string[] =>
      exportGroups(of).flatMap(({ actions }) => actions.map(({ what, kind }) => `${what}.${kind}`));
    expect(new Set(names(coat)).size).toBe(names(coat).length);
    expect(names(coat)).toEqual(
      expect.arrayContaining([
        'map.png',
        'map.svg',
        'thickness.csv',
        'radial-profile.csv',
        'witnesses.csv',
        'scene.glb',
      ]),
    );
    expect(names(bare)).not.toContain('witnesses.csv');
    expect(names(bare)).toHaveLength(names(coat).length - 1);
  });
});
