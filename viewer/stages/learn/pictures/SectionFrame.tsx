/** A cut through tank and mirror, to scale; other parts are drawn into it by its children. */
import type { ReactNode } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { backHeight } from '../../../../engine/geometry/mirrorShape.ts';
import { useSize } from '../../../charts/useSize.ts';

/** From a place of the section, m, to the picture, px. */
export type ToPicture = (along: number, z: number) => readonly [x: number, y: number];

interface SectionFrameProps {
  readonly plant: Plant;
  /** [places] of the face along the section, m */
  readonly along: Float64Array;
  readonly height: Float64Array;
  readonly description: string;
  readonly children: (at: ToPicture) => ReactNode;
}

const MARGIN = 10;

/** The face as one or two lines: it is cut where the glass has its hole. */
function facePieces({ shape }: Plant, along: Float64Array, height: Float64Array): (readonly [number, number])[][] {
  const pieces: (readonly [number, number])[][] = [[]];
  along.forEach((s, i) => {
    const isOverHole = i > 0 && shape.holeRadius > 0 && along[i - 1]! < 0 && s > 0;
    if (isOverHole) pieces.push([]);
    pieces.at(-1)!.push([s, height[i]!]);
  });
  return pieces;
}

export function SectionFrame({ plant, along, height, description, children }: SectionFrameProps) {
  const [holder, size] = useSize<HTMLDivElement>();
  const { tank, shape } = plant;
  const scale = Math.min(
    (size.width - 2 * MARGIN) / (2 * tank.radius),
    (size.height - 2 * MARGIN) / (tank.highZ - tank.lowZ),
  );
  const middle = (tank.lowZ + tank.highZ) / 2;
  const at: ToPicture = (s, z) => [size.width / 2 + scale * s, size.height / 2 - scale * (z - middle)];
  const [left, top] = at(-tank.radius, tank.highZ);
  const back = backHeight(shape);
  const path = (places: readonly (readonly [number, number])[]): string =>
    `M${places
      .map(([s, z]) =>
        at(s, z)
          .map((v) => v.toFixed(1))
          .join(' '),
      )
      .join('L')}`;
  return (
    <div className="chart-plate learn-section" ref={holder} role="img" aria-label={description}>
      {scale > 0 && (
        <svg width={size.width} height={size.height} aria-hidden="true">
          <rect
            className="learn-tank-wall"
            x={left}
            y={top}
            width={2 * tank.radius * scale}
            height={(tank.highZ - tank.lowZ) * scale}
            rx={3}
          />
          {facePieces(plant, along, height).map((piece, i) => (
            <g key={i}>
              <path
                className="learn-glass"
                d={`${path([[piece[0]![0], back], ...piece, [piece.at(-1)![0], back]])}Z`}
              />
              <path className="learn-face" d={path(piece)} />
            </g>
          ))}
          {children(at)}
        </svg>
      )}
    </div>
  );
}
