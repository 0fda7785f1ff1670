/** Moves the labels, which are plain text over the picture, to their places in the tank with each frame. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, type RefObject } from 'react';
import { Vector3 } from 'three';
import { useProbe } from '../state/probeStore.ts';

export interface Anchor {
  readonly key: string;
  /** m */
  readonly position: readonly [number, number, number];
}

interface AnchoredLabelsProps {
  /** holds one element with data-anchor for each anchor, and one for "probe" */
  readonly container: RefObject<HTMLDivElement | null>;
  readonly anchors: readonly Anchor[];
}

const OFF_SCREEN = 'translate(-1000px, -1000px)';

export function AnchoredLabels({ container, anchors }: AnchoredLabelsProps) {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => useProbe.subscribe(() => invalidate()), [invalidate]);
  useEffect(() => invalidate(), [anchors, invalidate]);
  useFrame(({ camera, size }) => {
    const place = (key: string, position: readonly [number, number, number] | undefined): void => {
      const element = container.current?.querySelector<HTMLElement>(`[data-anchor="${CSS.escape(key)}"]`);
      if (!element) return;
      const p = position && new Vector3(...position).project(camera);
      element.style.transform =
        p && p.z < 1
          ? `translate(${(((p.x + 1) * size.width) / 2).toFixed(1)}px, ${(((1 - p.y) * size.height) / 2).toFixed(1)}px)`
          : OFF_SCREEN;
    };
    for (const { key, position } of anchors) place(key, position);
    place('probe', useProbe.getState().reading?.position);
  });
  return null;
}
