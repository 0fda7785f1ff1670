/** A thin line, or separate segments, in a buffer that is written again and grows when it must. */
import {
  BufferAttribute,
  BufferGeometry,
  DynamicDrawUsage,
  Line,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
} from 'three';

interface LineLook {
  /** whether each pair of points is a segment of its own */
  readonly isPairs?: boolean;
  /** length of a dash, m; full without */
  readonly dash?: number;
}

export interface DynamicLine {
  readonly object: Line;
  /** @param position [3·points] m */
  readonly draw: (position: ArrayLike<number>) => void;
  readonly paint: (color: string) => void;
  readonly dispose: () => void;
}

/** Room for new points beyond what is asked for. */
const SPARE = 1.5;

function roomFor(points: number): BufferGeometry {
  const geometry = new BufferGeometry();
  for (const [name, size] of [
    ['position', 3],
    ['lineDistance', 1],
  ] as const) {
    const attribute = new BufferAttribute(new Float32Array(size * points), size);
    attribute.setUsage(DynamicDrawUsage);
    geometry.setAttribute(name, attribute);
  }
  return geometry;
}

/** Distances along the line, for its dashes. */
function distancesInto(out: Float32Array, position: ArrayLike<number>, isPairs: boolean): void {
  let along = 0;
  for (let i = 0; i < position.length / 3; i++) {
    const o = 3 * i;
    const isGap = i === 0 || (isPairs && i % 2 === 0);
    if (!isGap) {
      const [dx, dy, dz] = [0, 1, 2].map((k) => position[o + k]! - position[o + k - 3]!) as [number, number, number];
      along += Math.hypot(dx, dy, dz);
    }
    out[i] = along;
  }
}

export function createDynamicLine({ isPairs = false, dash = 0 }: LineLook = {}): DynamicLine {
  const look = { toneMapped: false };
  const material =
    dash > 0 ? new LineDashedMaterial({ ...look, dashSize: dash, gapSize: dash }) : new LineBasicMaterial(look);
  const object = isPairs ? new LineSegments(roomFor(2), material) : new Line(roomFor(2), material);
  object.frustumCulled = false;
  return {
    object,
    draw: (position) => {
      const count = position.length / 3;
      if (object.geometry.getAttribute('position').count < count) {
        object.geometry.dispose();
        object.geometry = roomFor(Math.ceil(SPARE * count));
      }
      const { position: place, lineDistance } = object.geometry.attributes as Record<string, BufferAttribute>;
      place!.array.set(position);
      place!.needsUpdate = true;
      if (dash > 0) {
        distancesInto(lineDistance!.array as Float32Array, position, isPairs);
        lineDistance!.needsUpdate = true;
      }
      object.geometry.setDrawRange(0, count);
    },
    paint: (color) => void material.color.set(color),
    dispose: () => {
      object.geometry.dispose();
      material.dispose();
    },
  };
}
