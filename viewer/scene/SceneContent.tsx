/** What is inside the canvas; its parts follow the picture without React. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { PerspectiveCamera } from 'three';
import { nextTask } from '../state/nextTask.ts';
import { drawTogether } from './drawTogether.ts';
import { usePicture, type Picture } from './picture.ts';
import { lendScene } from './sceneAccess.ts';
import { createLights, createSceneParts, sendParts, type SceneParts } from './sceneParts.ts';

export function SceneContent() {
  const group = useMemo(createLights, []);
  const shown = useRef<SceneParts | null>(null);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const element = useThree((state) => state.gl.domElement);
  const { gl, scene, invalidate, setFrameloop } = useThree();
  const [failure, setFailure] = useState<Error | null>(null);
  useEffect(() => {
    const drawer = drawTogether(invalidate);
    const leave = [drawer.stop];
    let isThere = true;
    const begin = async (): Promise<void> => {
      const content = await createSceneParts();
      const { parts, obstacles, things } = content;
      leave.push(() => parts.forEach(({ object, dispose }) => (group.remove(object), dispose())));
      for (const part of parts) {
        await nextTask();
        const { picture } = usePicture.getState();
        if (isThere && picture) part.update(picture);
      }
      await sendParts({ gl, scene, camera }, group, parts, () => isThere);
      if (!isThere) return;
      shown.current = content;
      const follow = ({ picture }: { readonly picture: Picture | null }): void => {
        if (!picture) return;
        for (const part of parts) part.update(picture);
        drawer.follow(picture);
      };
      leave.push(usePicture.subscribe(follow), lendScene({ camera, element, obstacles, things, invalidate }));
      follow(usePicture.getState());
      setFrameloop('demand');
      invalidate();
    };
    const begun = begin().catch(setFailure);
    return () => {
      isThere = false;
      void begun.then(() => leave.forEach((stop) => stop()));
    };
  }, [group, camera, element, gl, scene, invalidate, setFrameloop]);
  useFrame(() => {
    const { picture } = usePicture.getState();
    if (picture) shown.current?.lookFrom(camera.position.z, picture.coat.plant);
  });
  if (failure) throw failure;
  return <primitive object={group} />;
}
