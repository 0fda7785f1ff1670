/** The glass that carries the coat, and its clear aperture. */
import { useEffect, useMemo } from 'react';
import { DoubleSide } from 'three';
import type { MirrorShape } from '../../engine/geometry/mirrorShape.ts';
import type { Colors } from '../state/useColors.ts';
import { circleOnFace, glassGeometry } from './glassGeometry.ts';
import { Polyline } from './Polyline.tsx';

/** Height of lines above the face, as a share of the rim radius: enough to stay clear of its chords. */
export const LIFT = 0.002;

export function GlassBody({ shape, colors }: { readonly shape: MirrorShape; readonly colors: Colors }) {
  const geometry = useMemo(() => glassGeometry(shape), [shape]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const lift = LIFT * shape.rimRadius;
  const clearEdges = [
    ...(shape.clearInnerRadius > shape.holeRadius ? [shape.clearInnerRadius] : []),
    ...(shape.clearOuterRadius < shape.rimRadius ? [shape.clearOuterRadius] : []),
  ];
  return (
    <>
      <mesh geometry={geometry}>
        <meshLambertMaterial color={colors['scene-glass']} side={DoubleSide} />
      </mesh>
      {clearEdges.map((radius) => (
        <Polyline key={radius} position={circleOnFace(shape, radius, lift)} color={colors['scene-mark']} dash={0.02} />
      ))}
    </>
  );
}
