/** The mirror's face, coloured by the thickness of its coat. */
import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, DoubleSide } from 'three';
import type { Coat } from '../../engine/index.ts';
import { faceTriangles, type Face } from '../../engine/geometry/face.ts';
import { colorTexture, shareOf, texelOf, type ColorScale } from './colorScale.ts';

function faceGeometry(face: Face): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(face.points.position), 3));
  geometry.setAttribute('uv', new BufferAttribute(new Float32Array(2 * face.points.count).fill(0.5), 2));
  geometry.setIndex(new BufferAttribute(faceTriangles(face.cells), 1));
  return geometry;
}

export function CoatMesh({ coat, scale }: { readonly coat: Coat; readonly scale: ColorScale }) {
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => faceGeometry(coat.face), [coat.face]);
  const texture = useMemo(colorTexture, []);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => texture.dispose(), [texture]);
  useEffect(() => {
    const uv = geometry.getAttribute('uv');
    coat.thickness.forEach((thickness, i) => uv.setX(i, texelOf(shareOf(scale, thickness * 1e9))));
    uv.needsUpdate = true;
    invalidate();
  }, [geometry, coat, scale, invalidate]);
  return (
    <mesh geometry={geometry}>
      <meshBasicMaterial map={texture} toneMapped={false} side={DoubleSide} polygonOffset polygonOffsetFactor={1} />
    </mesh>
  );
}
