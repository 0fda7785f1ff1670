/** The plant from the side: tank, mirror, filaments, obstacles, and lines of sight with their lengths. */
import { backHeight, outlineRadius, sag } from '../../engine/geometry/mirrorShape.ts';
import type { Explanation } from '../../engine/explain/explainCoat.ts';
import type { SightLine } from '../../engine/explain/sightLines.ts';
import { lengthFor } from '../../engine/explain/words.ts';
import type { Filament, Plant } from '../../engine/index.ts';
import { label, n, path, picture, polyline, WIDTH } from './drawing.ts';
import { silhouettes } from './silhouettes.ts';

/** What the mirror faces in the tank; one that faces sideways is drawn as if it lay on its back. */
export type Facing = 'up' | 'down' | 'sideways';

type Point = readonly [number, number];
type Vector = readonly [number, number, number];

/** Height of the picture at most. */
const TALLEST = 280;
const MARGIN = 8;
const TOP = 20;
/** Steps along the section of the face. */
const STEPS = 48;
/** Least length of a filament's stroke, picture units. */
const STROKE = 5;
/** Lines on the paper that are too short to be written along. */
const SHORT = 60;
/** How far along its line a length is written, so that two lines to one place keep theirs apart. */
const LABELLED = [0.62, 0.36] as const;
/** Sets that are named in the picture. */
const MOST_SETS = 3;

interface View {
  readonly project: (point: Vector) => Point;
  readonly height: number;
}

/** Projects onto the plane through the mirror's axis at a clock angle, then onto the paper: the tank fills it. */
function viewOf({ shape, tank }: Plant, angle: number, facing: Facing): View {
  const [ex, ey] = [Math.cos(angle), Math.sin(angle)];
  const depth = tank.highZ - tank.lowZ;
  const scale = Math.min((WIDTH - 2 * MARGIN) / (2 * tank.radius), (TALLEST - TOP - MARGIN) / depth);
  const [middleX, middleY] = [WIDTH / 2, TOP + (scale * depth) / 2];
  const middleZ = (tank.highZ + tank.lowZ) / 2;
  const project = ([x, y, z]: Vector): Point => {
    const u = scale * ((x - shape.centerX) * ex + y * ey);
    const w = scale * (z - middleZ);
    return [middleX + u, middleY + (facing === 'down' ? w : -w)];
  };
  return { project, height: TOP + scale * depth + MARGIN };
}

/** The mirror cut through its middle: one outline, or two beside a hole. */
function mirrorOutlines({ shape }: Plant, angle: number, project: (point: Vector) => Point): Point[][] {
  const back = backHeight(shape);
  const at = (u: number): Vector => {
    const [x, y] = [shape.centerX + u * Math.cos(angle), u * Math.sin(angle)];
    return [x, y, sag(shape, Math.hypot(x, y))];
  };
  const half = (from: number, to: number): Point[] => {
    const face = Array.from({ length: STEPS + 1 }, (_, i) => at(from + ((to - from) * i) / STEPS));
    const ends = [face.at(-1)!, face[0]!].map(([x, y]): Vector => [x, y, back]);
    return [...face, ...ends].map(project);
  };
  const [left, right] = [-outlineRadius(shape, angle + Math.PI), outlineRadius(shape, angle)];
  return shape.holeRadius > 0 ? [half(left, -shape.holeRadius), half(shape.holeRadius, right)] : [half(left, right)];
}

function filamentStroke(
  { center, coilAxis, length, outOfUse, charge }: Filament,
  project: (point: Vector) => Point,
): string {
  const [x, y] = project(center);
  const end = center.map((c, k) => c + (coilAxis[k]! * length) / 2) as unknown as Vector;
  const [ex, ey] = project(end);
  const half = Math.hypot(ex - x, ey - y);
  const isIdle = outOfUse || charge === 0;
  if (isIdle) return path(`M${n(x - 4)} ${n(y - 4)}l8 8M${n(x - 4)} ${n(y + 4)}l8 -8`, 'idle');
  if (half < 0.5) return `<circle class="filament-end" cx="${n(x)}" cy="${n(y)}" r="2.5"/>`;
  const grow = Math.max(half, STROKE / 2) / half;
  const [dx, dy] = [(ex - x) * grow, (ey - y) * grow];
  return path(`M${n(x - dx)} ${n(y - dy)}L${n(x + dx)} ${n(y + dy)}`, 'filament');
}

/**
 * A line of sight, its length written along it.
 *
 * @param share how far along
 * @param side 1 above the line, −1 below it
 */
function sightLine(
  line: SightLine,
  text: string,
  project: (point: Vector) => Point,
  share: number,
  side: number,
): string[] {
  const [[ax, ay], [bx, by]] = [project(line.start), project(line.end)];
  const steep = Math.atan2(by - ay, bx - ax);
  const turn = Math.abs(steep) > Math.PI / 2 ? steep - Math.sign(steep) * Math.PI : steep;
  const gap = side > 0 ? 5 : -14;
  const x = ax + share * (bx - ax) + gap * Math.sin(turn);
  const y = ay + share * (by - ay) - gap * Math.cos(turn);
  const isShort = Math.hypot(bx - ax, by - ay) < SHORT;
  const notes = { clear: '', hidden: ', hidden', idle: ', idle' };
  const told = `${text}${notes[line.state]}`;
  return [
    path(
      polyline([
        [ax, ay],
        [bx, by],
      ]),
      line.state === 'clear' ? 'sight' : 'sight broken',
    ),
    `<circle class="spot" cx="${n(bx)}" cy="${n(by)}" r="3.5"/>`,
    isShort
      ? label(Math.max(ax, bx) + 8, (ay + by) / 2 + 4, told, { kind: 'halo strong' })
      : label(x, y, told, { anchor: 'middle', kind: 'halo strong', turn: (turn * 180) / Math.PI }),
  ];
}

/** Names of the places beside their spots, kept apart and inside the picture. */
function placeNames(lines: readonly SightLine[], project: (point: Vector) => Point, facing: Facing): string[] {
  const seen = new Set<string>();
  return lines.flatMap(({ place, end }) => {
    if (seen.has(place.label)) return [];
    seen.add(place.label);
    const [x, y] = project(end);
    const isNearEdge = x > WIDTH - 60;
    const anchor = isNearEdge ? 'end' : 'middle';
    return [label(isNearEdge ? x + 4 : x, y + (facing === 'down' ? -9 : 17), place.label, { anchor, kind: 'halo' })];
  });
}

/** How many filaments of which set there are; only the number where there are many sets. */
function filamentsTold({ setNames, filaments }: Plant): string {
  if (setNames.length > MOST_SETS) return `${filaments.length} filaments in ${setNames.length} sets`;
  const parts = setNames.map((name, i) => `“${name}” ${filaments.filter(({ set }) => set === i).length}`);
  return `filaments: ${parts.join(', ')}`;
}

/** The plant from the side. */
export function sideView({ coat, sight }: Explanation, facing: Facing): string {
  const { plant } = coat;
  const { tank } = plant;
  const { angle, lines } = sight;
  const { project, height } = viewOf(plant, angle, facing);
  const length = lengthFor(plant.shape);
  const corner = (side: number, z: number): Point =>
    project([plant.shape.centerX + side * tank.radius * Math.cos(angle), side * tank.radius * Math.sin(angle), z]);
  const walls = [corner(-1, tank.lowZ), corner(1, tank.lowZ), corner(1, tank.highZ), corner(-1, tank.highZ)];
  const toOnePlace = new Set(lines.map(({ place }) => place)).size < lines.length;
  const told = lines.map((line) => `${length(line.length)} to the ${line.place.label}`).join(', ');
  return picture(height, `Side view of the tank: the mirror and ${plant.filaments.length} filaments. ${told}`, [
    path(polyline(walls, true), 'tank'),
    ...mirrorOutlines(plant, angle, project).map((outline) => path(polyline(outline, true), 'glass')),
    ...silhouettes(plant, project).map((outline) => path(polyline(outline, true), 'solid')),
    ...plant.filaments.map((filament) => filamentStroke(filament, project)),
    ...lines.flatMap((line, i) =>
      sightLine(line, length(line.length), project, LABELLED[i % 2]!, i > 0 && toOnePlace ? -1 : 1),
    ),
    ...placeNames(lines, project, facing),
    label(WIDTH / 2, facing === 'down' ? height - MARGIN - 8 : TOP + 15, filamentsTold(plant), {
      anchor: 'middle',
      kind: 'quiet halo',
    }),
    label(
      MARGIN,
      13,
      `Side view, tank ${length(2 * tank.radius)} across${facing === 'sideways' ? '; drawn lying' : ''}`,
      { kind: 'quiet' },
    ),
  ]);
}
