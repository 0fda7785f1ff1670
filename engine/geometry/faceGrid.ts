/** The mirror's face divided into curvilinear cells: panels in radius times panels in azimuth. */
import { outlineRadius, slope, surfacePointInto, type MirrorShape } from './mirrorShape.ts';
import type { OrientedPoints } from './orientedPoints.ts';

/** Share of the radius that the edge ratio takes as the edge. */
const EDGE_SHARE = 0.02;
const MIN_AZIMUTH_PANELS = 12;
/** From this many azimuth panels on their number is a multiple of a dozen, below of four. */
const MANY_PANELS = 48;

/**
 * Where a cell lies: `innerRim` and `outerRim` are glass outside the clear aperture, `edge` is the
 * outermost 2 % of the clear aperture's radius, `clear` the rest of it.
 */
export type Zone = 'innerRim' | 'clear' | 'edge' | 'outerRim';

/** A rectangle in the grid's own coordinates: `a` in radial panels, `b` in azimuth panels. */
export interface Region {
  readonly a0: number;
  readonly a1: number;
  readonly b0: number;
  readonly b1: number;
}

export interface FaceGrid {
  readonly shape: MirrorShape;
  /** zone of each radial panel, from the middle outwards */
  readonly zones: readonly Zone[];
  /** clock angles where azimuth panels begin and end, rad; the last is the first plus 2π */
  readonly azimuthEdges: Float64Array;
  /** [zones.length + 1] for each panel edge: zone boundary below, share of the way to the next */
  readonly radialEdges: readonly { readonly boundary: number; readonly share: number }[];
}

/** Radii of the zone boundaries at a clock angle: hole, clear aperture, edge zone, clear aperture, outline. */
function zoneBoundary(shape: MirrorShape, index: number, angle: number): number {
  if (index === 0) return shape.holeRadius;
  if (index === 1) return shape.clearInnerRadius;
  const outline = outlineRadius(shape, angle);
  const clearOuter = Math.min(outline, shape.clearOuterRadius);
  if (index === 2) return Math.max(shape.clearInnerRadius, (1 - EDGE_SHARE) * clearOuter);
  return index === 3 ? clearOuter : outline;
}

const ZONES: readonly Zone[] = ['innerRim', 'clear', 'edge', 'outerRim'];

/** Widths of the four zones where they are widest, m. */
function zoneWidths(shape: MirrorShape): number[] {
  const angle = shape.cornerAngle ?? 0;
  return ZONES.map((_, z) => zoneBoundary(shape, z + 1, angle) - zoneBoundary(shape, z, angle));
}

/** Azimuths that panels must not straddle: corners of a hexagon, and where its sides cross the clear aperture. */
function azimuthBreaks(shape: MirrorShape): number[] {
  if (shape.cornerAngle === null) return [0];
  const sextant = Math.PI / 3;
  const apothem = shape.rimRadius * Math.cos(sextant / 2);
  const breaks: number[] = [];
  for (let k = 0; k < 6; k++) {
    const corner = shape.cornerAngle + k * sextant;
    breaks.push(corner);
    if (shape.clearOuterRadius <= apothem || shape.clearOuterRadius >= shape.rimRadius) continue;
    const half = Math.acos(apothem / shape.clearOuterRadius);
    breaks.push(corner + sextant / 2 - half, corner + sextant / 2 + half);
  }
  return breaks.toSorted((p, q) => p - q);
}

/** A number of azimuth panels with many divisors: turned filaments of a ring then share the columns of their shadows. */
function wholeTurns(wanted: number): number {
  const of = wanted < MANY_PANELS ? 4 : 12;
  return Math.max(MIN_AZIMUTH_PANELS, of * Math.round(wanted / of));
}

function divideAzimuth(shape: MirrorShape, wanted: number): Float64Array {
  const breaks = azimuthBreaks(shape);
  const first = breaks[0] ?? 0;
  const edges = [first];
  breaks.forEach((start, i) => {
    const end = breaks[i + 1] ?? first + 2 * Math.PI;
    const panels = Math.max(1, Math.round((wanted * (end - start)) / (2 * Math.PI)));
    for (let p = 1; p <= panels; p++) edges.push(start + ((end - start) * p) / panels);
  });
  return Float64Array.from(edges);
}

/**
 * Divides the face into cells of about equal sides.
 *
 * Panel edges lie on the clear aperture, on the start of the edge zone and, for a hexagon, on its
 * corners, so that no cell straddles a kink. With five nodes a side the grid has close to `pointCount` points.
 *
 * @param pointCount wanted number of points, ≥ 500
 */
export function createFaceGrid(shape: MirrorShape, pointCount: number): FaceGrid {
  const widths = zoneWidths(shape);
  const width = widths.reduce((sum, w) => sum + w, 0);
  const turnsPerWidth = (Math.PI * (shape.rimRadius + shape.holeRadius)) / width;
  const radialWanted = Math.max(3, Math.round(Math.sqrt(pointCount / (16 * turnsPerWidth))));
  const zones: Zone[] = [];
  const radialEdges = [{ boundary: 0, share: 0 }];
  ZONES.forEach((zone, z) => {
    if (!((widths[z] ?? 0) > 1e-9 * width)) return;
    const panels = Math.max(1, Math.round((radialWanted * (widths[z] ?? 0)) / width));
    if (zones.length === 0) radialEdges[0] = { boundary: z, share: 0 };
    for (let p = 1; p <= panels; p++) {
      zones.push(zone);
      radialEdges.push({ boundary: z, share: p / panels });
    }
  });
  const azimuthWanted = wholeTurns(pointCount / (16 * zones.length));
  return { shape, zones, radialEdges, azimuthEdges: divideAzimuth(shape, azimuthWanted) };
}

function panelEdgeRadius(grid: FaceGrid, index: number, angle: number): number {
  const { boundary, share } = grid.radialEdges[index] ?? { boundary: 3, share: 1 };
  const inner = zoneBoundary(grid.shape, boundary, angle);
  return inner + share * (zoneBoundary(grid.shape, boundary + 1, angle) - inner);
}

/** Clock angle at azimuth coordinate b on azimuth panel `panel`, rad. */
function gridAngle(grid: FaceGrid, b: number, panel: number): number {
  const start = grid.azimuthEdges[panel] ?? 0;
  return start + (b - panel) * ((grid.azimuthEdges[panel + 1] ?? 0) - start);
}

/**
 * Writes the node at grid coordinates (a, b) into slot i of `points` and returns its area element.
 *
 *     dA = r (dr/da) (dθ/db) √(1 + z′²) da db
 *
 * @param panelA radial panel that (a, b) belongs to; decides dr/da on a panel's edge
 * @param panelB azimuth panel that it belongs to
 * @returns [m²] per unit of a and b
 */
export function gridNodeInto(
  points: OrientedPoints,
  i: number,
  grid: FaceGrid,
  a: number,
  b: number,
  panelA: number,
  panelB: number,
): number {
  const angle = gridAngle(grid, b, panelB);
  const inner = panelEdgeRadius(grid, panelA, angle);
  const perA = panelEdgeRadius(grid, panelA + 1, angle) - inner;
  const perB = (grid.azimuthEdges[panelB + 1] ?? 0) - (grid.azimuthEdges[panelB] ?? 0);
  const r = inner + (a - panelA) * perA;
  const x = grid.shape.centerX + r * Math.cos(angle);
  const y = r * Math.sin(angle);
  surfacePointInto(points.position, points.normal, i, grid.shape, x, y);
  const s = slope(grid.shape, Math.hypot(x, y));
  return r * perA * perB * Math.sqrt(1 + s * s);
}
