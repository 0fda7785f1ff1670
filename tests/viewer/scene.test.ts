import { interpolateCividis } from 'd3-scale-chromatic';
import { Group, PerspectiveCamera, Ray, Raycaster, Vector2, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { createProbe, openPlantFile, type DesignFile, type Plant } from '../../engine/index.ts';
import { presets } from '../../presets/index.ts';
import { useDesign } from '../../viewer/state/designStore.ts';
import { beginGesture, cancelGesture, editDesign, endGesture, undo } from '../../viewer/state/editDesign.ts';
import { withValue } from '../../viewer/state/edits/path.ts';
import { nameOfPart } from '../../viewer/state/edits/parts.ts';
import { alongLine } from '../../viewer/scene/axisDrag.ts';
import { canStartAtZero, scaleOf } from '../../viewer/format/mapScale.ts';
import { colorTexture, texelOf } from '../../viewer/scene/colorScale.ts';
import { contourSegments } from '../../viewer/scene/contourSegments.ts';
import { feedLettersOf, feedSignsOf } from '../../viewer/scene/feedSigns.ts';
import { frame } from '../../viewer/scene/framing.ts';
import { handlesOf, type Design } from '../../viewer/scene/handles.ts';
import { isFree, shifted, wayOut, type Box } from '../../viewer/scene/labelRoom.ts';
import { obstacleOrder } from '../../viewer/scene/obstacleOrder.ts';
import { moveTo } from '../../viewer/scene/moveTo.ts';
import { texelsInto } from '../../viewer/scene/parts/coatPart.ts';
import { pickPart } from '../../viewer/scene/pick.ts';
import { probePathsOf } from '../../viewer/scene/probePaths.ts';
import { toScreen } from '../../viewer/scene/sceneAccess.ts';
import { snapped, stepOf } from '../../viewer/scene/snap.ts';
import type { Part } from '../../viewer/state/selection.ts';
import type { Units } from '../../viewer/state/units.ts';

/** Rounding of a few operations on numbers of order one. */
const ROUNDING = 1e-12;
/** Rounding of places that went through a text of the file, m: the file keeps 1e-13 m. */
const WRITTEN = 1e-12;
const METRIC: Units = { length: 'm', thickness: 'nm', mass: 'mg', pressure: 'mbar', temperature: 'degC' };
const IMPERIAL: Units = { ...METRIC, length: 'in' };

function designOf(file: unknown): Design {
  const opened = openPlantFile(file);
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return { file: opened.file, files: new Map(), plant: opened.plant };
}

const presetDesign = (id: string): Design => designOf(presets.find((preset) => preset.id === id)?.file);

describe('a drag along a line', () => {
  const camera = new PerspectiveCamera(30, 2, 0.1, 100);
  camera.position.set(3, -7, 4);
  camera.lookAt(0, 0, 0);
  camera.updateMatrixWorld();

  test.each([
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
    [0.6, 0.8, 0],
  ])('follows the pointer: what projects on it is found again (%f, %f, %f)', (...direction) => {
    const origin = new Vector3(0.3, -0.2, 0.9);
    const along = new Vector3(...direction);
    for (const t of [-1.5, 0, 0.25, 1]) {
      const onScreen = origin.clone().addScaledVector(along, t).project(camera);
      const raycaster = new Raycaster();
      raycaster.setFromCamera(new Vector2(onScreen.x, onScreen.y), camera);
      // projection matrices amplify rounding near the far plane
      expect(alongLine(raycaster.ray, origin, along)).toBeCloseTo(t, 9);
    }
  });

  test('has no answer for a line seen end on', () => {
    const ray = new Ray(new Vector3(0, 0, 5), new Vector3(0, 0, -1));
    expect(alongLine(ray, new Vector3(0, 0, 0), new Vector3(0, 0, 1))).toBeNull();
  });
});

describe('snapping', () => {
  test('takes 10 mm, 1 mm with Alt, and half inches for those who think in inches', () => {
    expect(stepOf('length', 'coarse', METRIC)).toBe(0.01);
    expect(stepOf('length', 'fine', METRIC)).toBe(0.001);
    // 1 in = 25.4 mm exactly: NIST SP 811 (2008), appendix B.8
    expect(stepOf('length', 'coarse', IMPERIAL)).toBeCloseTo(0.0127, 15);
    expect(stepOf('length', 'coarse', { ...METRIC, length: 'ft' })).toBeCloseTo(0.0127, 15);
  });

  test('goes to the nearest multiple', () => {
    expect(snapped(1.044, 0.01)).toBeCloseTo(1.04, 12);
    expect(snapped(-0.0051, 0.01)).toBeCloseTo(-0.01, 12);
  });
});

describe('handles', () => {
  const apply = (design: Design, part: Part, key: string, by: number): Design => {
    const handle = handlesOf(design, part, obstacleOrder(design.file), 0.5).find((item) => item.key === key);
    if (!handle) throw new Error(`expected a handle ${key} on ${nameOfPart(design, part)}`);
    return designOf(handle.apply(handle.value + by));
  };
  const ring: Part = { kind: 'set', index: 0 };

  test('a ring has a diameter and a height, and both do what they say', () => {
    const design = presetDesign('tarn-hill-as-wired');
    expect(handlesOf(design, ring, [], 0).map(({ key }) => key)).toEqual(['diameter', 'height']);
    const wider = apply(design, ring, 'diameter', -0.2).plant.filaments[0];
    expect(Math.hypot(...(wider?.center.slice(0, 2) ?? []))).toBeCloseTo(1.35, 12);
    const higher = apply(design, ring, 'height', 0.1).plant.filaments[0];
    expect(higher?.center[2]).toBeCloseTo(1, 12);
  });

  test('the diameter’s handle lies on the ring where it is asked to', () => {
    const [handle] = handlesOf(presetDesign('tarn-hill-as-wired'), ring, [], Math.PI / 2);
    expect(handle?.origin[0]).toBeCloseTo(0, 12);
    expect(handle?.origin[1]).toBeCloseTo(1.45, 12);
    expect(handle?.perMetre).toBe(2);
  });

  test.each([
    ['a filament', { kind: 'filament', set: 0, number: 3 }, 'tarn-hill-as-wired', -0.05],
    ['an obstacle', { kind: 'obstacle', index: 0 }, 'spider-shadow', 0.02],
    ['a mesh', { kind: 'obstacle', index: 5 }, 'spider-shadow', 0.02],
    ['a grid', { kind: 'set', index: 0 }, 'spider-shadow', 0.05],
  ] as const)('%s moves along x, y and z by what is asked, and nothing else does', (_, part, id, by) => {
    const design = presetDesign(id);
    for (const key of ['x', 'y', 'z'] as const) {
      const before = handlesOf(design, part, obstacleOrder(design.file), 0);
      const after = handlesOf(apply(design, part, key, by), part, obstacleOrder(design.file), 0);
      for (const handle of after) {
        const was = before.find((item) => item.key === handle.key)?.value ?? NaN;
        // meshes are kept in single precision
        expect(handle.value - was).toBeCloseTo(handle.key === key ? by : 0, part.kind === 'obstacle' ? 6 : 11);
      }
    }
  });

  test('a witness on the mirror slides along its radius and around the clock, on the surface', () => {
    const design = presetDesign('tarn-hill-as-wired');
    const part: Part = { kind: 'witness', index: 1 };
    const inward = apply(design, part, 'radius', -0.24).file.witnesses?.[1];
    expect(inward?.radius).toBe('1.1 m');
    const around = apply(design, part, 'angle', Math.PI / 6).file.witnesses?.[1];
    expect(Number.parseFloat(around?.angle ?? '')).toBeCloseTo(30, 9);
    expect(Number.parseFloat(around?.radius ?? '')).toBeCloseTo(1.34, 12);
  });
});

describe('picking', () => {
  const sightOf = (plant: Plant, view: 'free' | 'front' | 'mirror') => {
    const camera = new PerspectiveCamera(30, 1000 / 600, 0.05, 100);
    camera.up.set(0, 0, 1);
    const { position, target } = frame(plant, camera, view);
    camera.position.copy(position);
    camera.lookAt(target);
    camera.updateMatrixWorld();
    return { camera, obstacles: new Group(), width: 1000, height: 600 };
  };

  test('finds each filament where it is drawn', () => {
    const { plant } = presetDesign('tarn-hill-as-wired');
    const sight = sightOf(plant, 'free');
    for (const { set, number, center } of plant.filaments) {
      const at = toScreen(sight.camera, sight, center);
      expect(pickPart(sight, plant, at!)).toEqual({ kind: 'filament', set, number });
    }
  });

  test('finds the mirror between them, the tank around it, and nothing outside', () => {
    const { plant } = presetDesign('tarn-hill-as-wired');
    const sight = sightOf(plant, 'front');
    const at = (x: number, y: number, z: number) => toScreen(sight.camera, sight, [x, y, z])!;
    expect(pickPart(sight, plant, at(0.8, 0, 0.03))).toEqual({ kind: 'mirror' });
    // the floor, seen between the glass and the ring above it
    expect(pickPart(sight, plant, at(-1.06, -1.06, plant.tank.lowZ))).toEqual({ kind: 'tank' });
    expect(pickPart(sight, plant, [3, 3])).toBeNull();
  });

  test('looks through the glass from behind, as the picture does', () => {
    const { plant } = presetDesign('tarn-hill-as-wired');
    const sight = sightOf(plant, 'mirror');
    expect(pickPart(sight, plant, [sight.width / 2 + 60, sight.height / 2])).toEqual({ kind: 'tank' });
  });
});

describe('paths to the probe', () => {
  test('carry what arrives: open ones all of it, blocked ones less', async () => {
    const { plant } = presetDesign('spider-shadow');
    const probe = await createProbe(plant);
    let blocked = 0;
    for (const [x, y] of [
      [0.3, 0.02],
      [-0.2, 0.35],
      [0.15, -0.15],
    ] as const) {
      const reading = probe(x, y);
      if (!reading) throw new Error('expected a place on the glass');
      const paths = probePathsOf(plant, reading);
      expect(paths.length).toBe(16);
      for (const { iFilament, open, arriving, isBlocked } of paths) {
        expect(arriving).toBe(reading.contributions[iFilament]);
        expect(arriving).toBeLessThanOrEqual(open * (1 + ROUNDING));
        if (isBlocked) blocked++;
        else expect(Math.abs(arriving / open - 1)).toBeLessThan(ROUNDING);
      }
      expect(paths.map(({ open }) => open)).toEqual(paths.map(({ open }) => open).toSorted((a, b) => b - a));
    }
    expect(blocked).toBeGreaterThan(0);
  });

  test('are the strongest 24 of many', async () => {
    const { plant } = presetDesign('deep-fast-6m5');
    const reading = (await createProbe(plant))(1.7, 0.4);
    if (!reading) throw new Error('expected a place on the glass');
    const paths = probePathsOf(plant, reading);
    expect(paths.length).toBe(24);
    const others = [...reading.contributions].filter((_, i) => !paths.some(({ iFilament }) => iFilament === i));
    const least = paths.at(-1)?.open ?? 0;
    for (const other of others) expect(other).toBeLessThanOrEqual(least * (1 + ROUNDING));
  });
});

describe('colours', () => {
  const view = { quantity: 'thickness', range: { mode: 'automatic' }, fromZero: false } as const;

  test('a texel’s middle is its colour: value to texture coordinate and back', () => {
    const scale = scaleOf(Float64Array.of(60, 130), { ...view, range: { mode: 'fixed', low: 60, high: 130 } });
    const out = texelsInto(new Float32Array(6), Float64Array.of(60, 130, NaN), scale);
    const { image } = colorTexture();
    const texelAt = (i: number): number[] => {
      const { width, height } = image;
      const column = Math.floor(out[2 * i]! * width);
      const row = Math.floor(out[2 * i + 1]! * height);
      const o = 4 * (row * width + column);
      return Array.from((image.data as Uint8Array).subarray(o, o + 3));
    };
    // the general-purpose library d3-scale-chromatic, after Nuñez, Anderton and Renslow, PLoS ONE 13 (2018) e0199239
    const channels = (share: number): number[] => (interpolateCividis(share).match(/\d+/g) ?? []).map(Number);
    expect(texelAt(0)).toEqual(channels(0));
    expect(texelAt(1)).toEqual(channels(1));
    expect(texelAt(2)).toEqual([168, 168, 172]);
    expect(texelOf(0) * 256).toBe(0.5);
    expect(texelOf(1) * 256).toBe(255.5);
  });

  test('a fixed range stays as chosen, a shared one spans all variants, an automatic one may begin at zero', () => {
    const values = Float64Array.of(70, 100, NaN, 125);
    expect(scaleOf(values, { ...view, range: { mode: 'fixed', low: 71.3, high: 99.9 } })).toMatchObject({
      low: 71.3,
      high: 99.9,
    });
    expect(scaleOf(values, { ...view, range: { mode: 'shared' } }, [40, 160])).toMatchObject({ low: 40, high: 160 });
    expect(scaleOf(values, { ...view, fromZero: true }).low).toBe(0);
    expect(scaleOf(values, view)).toMatchObject({ low: 70, high: 130 });
  });

  test('only a thickness begins at zero, and not in a fixed range', () => {
    const values = Float64Array.of(70, 125);
    const fromZero = { ...view, fromZero: true };
    const range = { mode: 'fixed', low: 71, high: 99 } as const;
    expect(canStartAtZero(fromZero)).toBe(true);
    for (const other of [{ ...fromZero, quantity: 'incidence' } as const, { ...fromZero, range }]) {
      expect(canStartAtZero(other)).toBe(false);
      expect(scaleOf(values, other)).toEqual(scaleOf(values, { ...other, fromZero: false }));
    }
  });
});

describe('contours', () => {
  test('of a plane field are straight, at its level, as long as the square is wide', () => {
    const position = Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0);
    const segments = contourSegments(position, Uint32Array.of(0, 1, 3, 0, 3, 2), Float64Array.of(0, 1, 0, 1), 0.3);
    let length = 0;
    for (let o = 0; o < segments.length; o += 6) {
      const [x0 = 0, y0 = 0, , x1 = 0, y1 = 0] = segments.slice(o, o + 6);
      // single precision
      expect(x0).toBeCloseTo(0.3, 6);
      expect(x1).toBeCloseTo(0.3, 6);
      length += Math.abs(y1 - y0);
    }
    expect(length).toBeCloseTo(1, 6);
    expect(contourSegments(position, Uint32Array.of(0, 1, 3), Float64Array.of(0, 1, 0, 1), 2).length).toBe(0);
  });
});

describe('feeds', () => {
  test('have labels of their own in every preset, and neighbours differ in colour', () => {
    for (const { file } of presets) {
      const { plant } = designOf(file satisfies DesignFile);
      const signs = [...feedSignsOf(plant).values()];
      expect(new Set(signs.map(({ label }) => label)).size).toBe(signs.length);
      signs.slice(1).forEach((sign, i) => expect(sign.color).not.toBe(signs[i]?.color));
    }
  });

  test('letters stand for sets only where numbers repeat', () => {
    expect(feedLettersOf(presetDesign('tarn-hill-as-wired').plant)).toBe('');
    expect(feedLettersOf(presetDesign('tarn-hill-second-ring').plant)).toBe('A outer, B inner');
    expect(feedLettersOf(presetDesign('hexagon-segment').plant)).toBe('');
  });
});

describe('room for labels', () => {
  const stage: Box = [0, 0, 400, 300];

  test('a label moves out of the way of those before it and stays in the picture', () => {
    const taken: Box[] = [];
    for (let i = 0; i < 9; i++) {
      const box: Box = [150, 140, 230, 158];
      const move = wayOut(box, taken, stage, 120);
      if (!move) throw new Error(`expected room for label ${i}`);
      const placed = shifted(box, move[0], move[1]);
      expect(isFree(placed, taken)).toBe(true);
      expect(placed[0]).toBeGreaterThanOrEqual(stage[0]);
      expect(placed[3]).toBeLessThanOrEqual(stage[3]);
      taken.push(placed);
    }
  });

  test('one that has no room near by says so', () => {
    expect(wayOut([150, 140, 230, 158], [[0, 0, 400, 300]], stage, 120)).toBeNull();
  });
});

describe('framing', () => {
  test.each(['free', 'front', 'side', 'mirror'] as const)(
    'holds the whole tank of every preset in the view %s',
    (view) => {
      for (const { file } of presets) {
        const { plant } = designOf(file satisfies DesignFile);
        const camera = new PerspectiveCamera(30, 1.8, 0.05, 500);
        camera.up.set(0, 0, 1);
        const { position, target } = frame(plant, camera, view);
        camera.position.copy(position);
        camera.lookAt(target);
        camera.updateMatrixWorld();
        for (const { center } of plant.filaments) {
          const p = new Vector3(...center).project(camera);
          expect(Math.max(Math.abs(p.x), Math.abs(p.y))).toBeLessThan(1);
        }
      }
    },
  );
});

test('written places come back exactly enough to be dragged again and again', () => {
  let design = presetDesign('tarn-hill-as-wired');
  for (let i = 0; i < 20; i++) {
    const [handle] = handlesOf(design, { kind: 'set', index: 0 }, [], 0.3);
    design = designOf(handle!.apply(handle!.value + (i % 2 === 0 ? -0.01 : 0.01)));
  }
  const [center] = design.plant.filaments.map(({ center: place }) => place);
  expect(Math.abs(Math.hypot(center![0], center![1]) - 1.45)).toBeLessThan(WRITTEN);
});

describe('a drag as a step', () => {
  const label = 'height of outer';
  const heightTo = (height: string): void => {
    const problems = editDesign(label, (file) => withValue(file, ['filaments', 0, 'height'], height));
    expect(problems).toEqual([]);
  };
  const heightNow = (): number | undefined => useDesign.getState().current.plant.filaments[0]?.center[2];

  test('all edits between its ends are one step, and the next edit is another', () => {
    const before = useDesign.getState().past.length;
    beginGesture();
    for (const height of ['0.91 m', '0.95 m', '1 m']) heightTo(height);
    endGesture();
    heightTo('1.1 m');
    expect(useDesign.getState().past.length).toBe(before + 2);
    undo();
    expect(heightNow()).toBe(1);
    undo();
    expect(heightNow()).toBe(0.9);
  });

  test('given up, it leaves design and history as they were', () => {
    const before = useDesign.getState();
    beginGesture();
    heightTo('0.8 m');
    cancelGesture();
    expect(useDesign.getState().current).toBe(before.current);
    expect(useDesign.getState().past).toBe(before.past);
  });

  test('a wanted place beyond the wall is approached in steps, as near as the engine lets it', () => {
    const handle = handlesOf(useDesign.getState().current, { kind: 'set', index: 0 }, [], 0)[0]!;
    const { value, refusal } = moveTo(handle, handle.value, 3.9, 0.01);
    // 3.4 m wide; a loop of the tangential coil, 24 mm off its middle, lies within it up to a ring of 3.3996 m
    expect(value).toBeCloseTo(3.39, 9);
    expect(refusal).toMatch(/outside the tank/);
    expect(useDesign.getState().current.file.filaments[0]).toMatchObject({ diameter: '3.39 m' });
  });
});
