/** Everything inside the canvas, as parts that follow the picture without React. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import {
  DirectionalLight,
  Group,
  HemisphereLight,
  type Camera,
  type PerspectiveCamera,
  type Scene,
  type WebGLRenderer,
} from 'three';
import { backHeight } from '../../engine/geometry/mirrorShape.ts';
import { createCoatPart } from './parts/coatPart.ts';
import { createCoilsPart } from './parts/coilsPart.ts';
import { createGlassPart } from './parts/glassPart.ts';
import { createObstaclesPart } from './parts/obstaclesPart.ts';
import { createPathsPart } from './parts/pathsPart.ts';
import { createSelectionPart } from './parts/selectionPart.ts';
import { createShellPart } from './parts/shellPart.ts';
import { createTolerancePart } from './parts/tolerancePart.ts';
import { createWitnessPart } from './parts/witnessPart.ts';
import { drawTogether } from './drawTogether.ts';
import { usePicture, type Picture } from './picture.ts';
import { nextTask } from '../state/nextTask.ts';
import { lendScene } from './sceneAccess.ts';

function createContent() {
  const coat = createCoatPart();
  const glass = createGlassPart();
  const tolerance = createTolerancePart();
  const obstacles = createObstaclesPart();
  const [shell, witnesses, coils] = [createShellPart(), createWitnessPart(), createCoilsPart()];
  const parts = [
    shell,
    glass,
    coat,
    tolerance,
    obstacles,
    witnesses,
    coils,
    createPathsPart(),
    createSelectionPart(obstacles.object),
  ];
  const sky = new HemisphereLight('#ffffff', '#a0a0a0', 2.2);
  sky.position.set(0, 0, 1);
  const sun = new DirectionalLight('#ffffff', 1.2);
  sun.position.set(-2, -4, 6);
  const group = new Group();
  group.add(sky, sun, ...parts.map((part) => part.object));
  return {
    group,
    obstacles: obstacles.object,
    things: [coat, glass, shell, obstacles, witnesses, coils].map(({ object }) => object),
    update: (picture: Picture): void => {
      for (const part of parts) part.update(picture);
    },
    /** From behind, the glass and its coat would hide the filaments: then only their outline is drawn. */
    lookFrom: (height: number, plant: Picture['plant']): void => {
      const isBehind = height < backHeight(plant.shape);
      for (const object of [coat.object, tolerance.object, glass.body]) object.visible = !isBehind;
      glass.outline.visible = isBehind;
    },
    dispose: (): void => {
      for (const part of parts) part.dispose();
    },
  };
}

/** Without this the first frame would wait for every shader in turn. What fails here fails in that frame, which says so. */
async function compileShaders(gl: WebGLRenderer, scene: Scene, camera: Camera): Promise<void> {
  try {
    if (gl.extensions.has('KHR_parallel_shader_compile')) await gl.compileAsync(scene, camera);
    else gl.compile(scene, camera);
  } catch {
    return;
  }
}

export function SceneContent() {
  const content = useMemo(createContent, []);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const element = useThree((state) => state.gl.domElement);
  const { gl, scene, invalidate, setFrameloop } = useThree();
  useEffect(() => {
    const drawer = drawTogether(invalidate);
    const follow = ({ picture }: { readonly picture: Picture | null }): void => {
      if (!picture) return;
      content.update(picture);
      drawer.follow(picture);
    };
    let isThere = true;
    const begin = async (): Promise<void> => {
      await nextTask();
      if (!isThere) return;
      follow(usePicture.getState());
      await nextTask();
      await compileShaders(gl, scene, camera);
      await nextTask();
      if (!isThere) return;
      setFrameloop('demand');
      invalidate();
    };
    void begin();
    const takeBack = lendScene({ camera, element, obstacles: content.obstacles, things: content.things, invalidate });
    const stop = usePicture.subscribe(follow);
    return () => {
      isThere = false;
      stop();
      drawer.stop();
      takeBack();
      content.dispose();
    };
  }, [content, camera, element, gl, scene, invalidate, setFrameloop]);
  useFrame(() => {
    const { picture } = usePicture.getState();
    if (picture) content.lookFrom(camera.position.z, picture.coat.plant);
  });
  return <primitive object={content.group} />;
}
