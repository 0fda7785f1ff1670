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

type Box = readonly [left: number, top: number, right: number, bottom: number];

const overlaps = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** How far a label must move down so that it covers none of those before it. */
function wayDown([left, top, right, bottom]: Box, taken: readonly Box[]): number {
  let down = 0;
  for (let tries = 0; tries < taken.length; tries++) {
    const hit = taken.find((other) => overlaps([left, top + down, right, bottom + down], other));
    if (!hit) break;
    down = hit[3] - top + 1;
  }
  return down;
}

export function AnchoredLabels({ container, anchors }: AnchoredLabelsProps) {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => useProbe.subscribe(() => invalidate()), [invalidate]);
  useEffect(() => invalidate(), [anchors, invalidate]);
  useFrame(({ camera, size }) => {
    const taken: Box[] = [];
    camera.updateMatrixWorld(); // a frame's hooks run before three does this itself
    const place = ({ key, position }: Anchor): void => {
      const element = container.current?.querySelector<HTMLElement>(`[data-anchor="${CSS.escape(key)}"]`);
      if (!element) return;
      const p = new Vector3(...position).project(camera);
      if (!(p.z < 1)) {
        element.style.transform = OFF_SCREEN;
        return;
      }
      const x = ((p.x + 1) * size.width) / 2;
      const y = ((1 - p.y) * size.height) / 2;
      element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      const text = element.querySelector<HTMLElement>('.label-text');
      if (!text) return;
      const [left, top] = [x + text.offsetLeft, y + text.offsetTop];
      const box: Box = [left, top, left + text.offsetWidth, top + text.offsetHeight];
      const down = wayDown(box, taken);
      text.style.transform = `translateY(${down.toFixed(1)}px)`;
      taken.push([box[0], box[1] + down, box[2], box[3] + down]);
    };
    anchors.forEach(place);
    const { reading } = useProbe.getState();
    place({ key: 'probe', position: reading?.position ?? [NaN, NaN, NaN] });
  });
  return null;
}
