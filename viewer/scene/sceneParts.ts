/** Everything inside the canvas: its parts, made and drawn one by one, so that the page answers in between. */
import { DirectionalLight, Group, HemisphereLight, type Camera, type Scene, type WebGLRenderer } from 'three';
import { backHeight } from '../../engine/geometry/mirrorShape.ts';
import { nextTask } from '../state/nextTask.ts';
import { createCoatPart } from './parts/coatPart.ts';
import { createCoilsPart } from './parts/coilsPart.ts';
import { createGlassPart } from './parts/glassPart.ts';
import { createObstaclesPart } from './parts/obstaclesPart.ts';
import { createPathsPart } from './parts/pathsPart.ts';
import type { ScenePart } from './parts/scenePart.ts';
import { createSelectionPart } from './parts/selectionPart.ts';
import { createShellPart } from './parts/shellPart.ts';
import { createTolerancePart } from './parts/tolerancePart.ts';
import { createWitnessPart } from './parts/witnessPart.ts';
import type { Picture } from './picture.ts';

export type SceneParts = Awaited<ReturnType<typeof createSceneParts>>;

/** Makes the parts, each in a task of its own. */
export async function createSceneParts() {
  const make = async <P extends ScenePart>(create: () => P): Promise<P> => {
    await nextTask();
    return create();
  };
  const shell = await make(createShellPart);
  const glass = await make(createGlassPart);
  const coat = await make(createCoatPart);
  const tolerance = await make(createTolerancePart);
  const obstacles = await make(createObstaclesPart);
  const witnesses = await make(createWitnessPart);
  const coils = await make(createCoilsPart);
  const paths = await make(createPathsPart);
  const selection = await make(() => createSelectionPart(obstacles.object));
  return {
    parts: [shell, glass, coat, tolerance, obstacles, witnesses, coils, paths, selection] satisfies ScenePart[],
    obstacles: obstacles.object,
    things: [coat, glass, shell, obstacles, witnesses, coils].map(({ object }) => object),
    /** From behind, the glass and its coat would hide the filaments: then only their outline is drawn. */
    lookFrom: (height: number, plant: Picture['plant']): void => {
      const isBehind = height < backHeight(plant.shape);
      for (const object of [coat.object, tolerance.object, glass.body]) object.visible = !isBehind;
      glass.outline.visible = isBehind;
    },
  };
}

/** The lights, and room for the parts. */
export function createLights(): Group {
  const sky = new HemisphereLight('#ffffff', '#a0a0a0', 2.2);
  sky.position.set(0, 0, 1);
  const sun = new DirectionalLight('#ffffff', 1.2);
  sun.position.set(-2, -4, 6);
  return new Group().add(sky, sun);
}

/** Where the parts are to appear. */
interface Stage {
  readonly gl: WebGLRenderer;
  readonly scene: Scene;
  readonly camera: Camera;
}

/**
 * Sends the parts to the graphics card one after the other: draws them into a corner of one pixel.
 *
 * @param isWanted whether to go on
 */
export async function sendParts(
  { gl, scene, camera }: Stage,
  group: Group,
  parts: readonly ScenePart[],
  isWanted: () => boolean,
): Promise<void> {
  gl.debug.checkShaderErrors = import.meta.env.DEV; // each question would wait for the graphics card
  const objects = parts.map(({ object }) => object);
  group.add(...objects);
  // or the first frame would wait for every shader in turn; without the extension three would warn
  if (gl.extensions.has('KHR_parallel_shader_compile')) await gl.compileAsync(scene, camera);
  else gl.compile(scene, camera);
  for (const program of gl.info.programs ?? []) {
    await nextTask();
    program.getUniforms(); // waits for the graphics card
  }
  group.remove(...objects);
  for (const object of objects) {
    await nextTask();
    if (!isWanted()) return;
    group.add(object);
    gl.setScissorTest(true);
    gl.setScissor(0, 0, 1, 1);
    gl.render(scene, camera);
    gl.setScissorTest(false);
  }
  await nextTask();
}
