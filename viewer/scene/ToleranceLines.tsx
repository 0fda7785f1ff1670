/** Where on the mirror the coat leaves its tolerance: a full line at the lower limit, a dashed one at the upper. */
import { useMemo } from 'react';
import type { Coat } from '../../engine/index.ts';
import { faceTriangles } from '../../engine/geometry/face.ts';
import { contourSegments } from './contourSegments.ts';
import { LIFT } from './GlassBody.tsx';
import { Polyline } from './Polyline.tsx';

/** Cividis runs from dark blue to yellow: white and black each stand out at their own end. */
const LOWER_LINE = '#ffffff';
const UPPER_LINE = '#000000';

export function ToleranceLines({ coat }: { readonly coat: Coat }) {
  const { face, thickness, plant, statistics } = coat;
  const [lower, upper] = useMemo(() => {
    const triangles = faceTriangles(face.cells);
    return [1 - plant.film.tolerance, 1 + plant.film.tolerance].map((factor) =>
      contourSegments(face.points.position, triangles, thickness, factor * statistics.mean.value),
    );
  }, [face, thickness, plant, statistics]);
  const lift = LIFT * plant.shape.rimRadius;
  return (
    <group position={[0, 0, lift]}>
      {lower && <Polyline position={lower} color={LOWER_LINE} isPairs />}
      {upper && <Polyline position={upper} color={UPPER_LINE} isPairs dash={0.015} />}
    </group>
  );
}
