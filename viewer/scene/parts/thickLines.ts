/** Segments several pixels wide, in a buffer that is written again and grows when it must. */
import { InstancedInterleavedBuffer, InterleavedBufferAttribute } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';

export interface ThickLines {
  readonly object: LineSegments2;
  /** @param position [6·segments] ends of each segment, m */
  readonly draw: (position: readonly number[]) => void;
  readonly paint: (color: string) => void;
  readonly dispose: () => void;
}

const SPARE = 1.5;

function roomFor(segments: number): LineSegmentsGeometry {
  const geometry = new LineSegmentsGeometry();
  const buffer = new InstancedInterleavedBuffer(new Float32Array(6 * segments), 6, 1);
  geometry.setAttribute('instanceStart', new InterleavedBufferAttribute(buffer, 3, 0));
  geometry.setAttribute('instanceEnd', new InterleavedBufferAttribute(buffer, 3, 3));
  return geometry;
}

/** @param width px */
export function createThickLines(width: number): ThickLines {
  const material = new LineMaterial({ linewidth: width, toneMapped: false });
  const object = new LineSegments2(roomFor(48), material);
  object.frustumCulled = false;
  const bufferOf = (): InstancedInterleavedBuffer =>
    (object.geometry.getAttribute('instanceStart') as InterleavedBufferAttribute).data as InstancedInterleavedBuffer;
  return {
    object,
    draw: (position) => {
      if (bufferOf().array.length < position.length) {
        object.geometry.dispose();
        object.geometry = roomFor(Math.ceil((SPARE * position.length) / 6));
      }
      const buffer = bufferOf();
      buffer.array.set(position);
      buffer.needsUpdate = true;
      object.geometry.instanceCount = position.length / 6;
      object.visible = position.length > 0;
    },
    paint: (color) => void material.color.set(color),
    dispose: () => {
      object.geometry.dispose();
      material.dispose();
    },
  };
}
