/** A thin line through points, or single segments between pairs of them; dashed if asked. */
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, Line, LineBasicMaterial, LineDashedMaterial, LineSegments } from 'three';

interface PolylineProps {
  /** [3·points] m */
  readonly position: Float32Array;
  readonly color: string;
  /** length of a dash, m */
  readonly dash?: number;
  /** whether each pair of points is a segment of its own */
  readonly isPairs?: boolean;
  readonly opacity?: number;
}

export function Polyline({ position, color, dash = 0, isPairs = false, opacity = 1 }: PolylineProps) {
  const line = useMemo(() => {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(position, 3));
    const look = { color, opacity, transparent: opacity < 1, toneMapped: false };
    const material =
      dash > 0 ? new LineDashedMaterial({ ...look, dashSize: dash, gapSize: dash }) : new LineBasicMaterial(look);
    const made = isPairs ? new LineSegments(geometry, material) : new Line(geometry, material);
    if (dash > 0) made.computeLineDistances();
    return made;
  }, [position, color, dash, isPairs, opacity]);
  useEffect(
    () => () => {
      line.geometry.dispose();
      line.material.dispose();
    },
    [line],
  );
  return <primitive object={line} />;
}
