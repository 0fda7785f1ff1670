/** The mirror's face, coloured by the mapped quantity. */
import { BufferAttribute, BufferGeometry, DoubleSide, DynamicDrawUsage, Mesh, MeshBasicMaterial } from 'three';
import { faceTriangles, type Face } from '../../../engine/geometry/face.ts';
import { colorTexture, NONE_ROW, SCALE_ROW, texelOf, type ColorScale } from '../colorScale.ts';
import { shareOn } from '../../../workers/picture/valueScale.ts';
import { whenChanged } from '../whenChanged.ts';
import type { ScenePart } from './scenePart.ts';

function faceGeometry(face: Face): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(face.points.position), 3));
  const uv = new BufferAttribute(new Float32Array(2 * face.points.count), 2);
  uv.setUsage(DynamicDrawUsage);
  geometry.setAttribute('uv', uv);
  geometry.setIndex(new BufferAttribute(faceTriangles(face.cells), 1));
  return geometry;
}

/** Texture coordinates of values: overwrites `out`, two slots a point. */
export function texelsInto(out: Float32Array, values: Float64Array, scale: ColorScale): Float32Array {
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    const isNumber = value === value;
    out[2 * i] = isNumber ? texelOf(shareOn(scale, value)) : 0.5;
    out[2 * i + 1] = isNumber ? SCALE_ROW : NONE_ROW;
  }
  return out;
}

export function createCoatPart(): ScenePart {
  const texture = colorTexture();
  const material = new MeshBasicMaterial({
    map: texture,
    toneMapped: false,
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 1,
  });
  const object = new Mesh(new BufferGeometry(), material);
  object.name = 'coat';
  object.frustumCulled = false;
  const reshape = whenChanged((face: Face) => {
    object.geometry.dispose();
    object.geometry = faceGeometry(face);
  });
  const recolor = whenChanged((_geometry: BufferGeometry, values: Float64Array, scale: ColorScale) => {
    const uv = object.geometry.getAttribute('uv') as BufferAttribute;
    texelsInto(uv.array as Float32Array, values, scale);
    uv.needsUpdate = true;
  });
  return {
    object,
    update: ({ coat, field, scale }) => {
      reshape(coat.face);
      recolor(object.geometry, field.values, scale);
    },
    dispose: () => {
      object.geometry.dispose();
      material.dispose();
      texture.dispose();
    },
  };
}
