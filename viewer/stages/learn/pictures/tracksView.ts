/** Tank, mirror, filaments and tracks in 3D: unlit, drawn only when something has changed. */
import {
  BufferGeometry,
  Color,
  DoubleSide,
  Float32BufferAttribute,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  PerspectiveCamera,
  Points,
  PointsMaterial,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Plant } from '../../../../engine/index.ts';
import { circleOnFace, glassGeometry } from '../../../scene/glassGeometry.ts';
import { localSolid, placeOfSolid } from '../../../scene/solidGeometry.ts';
import type { Colors } from '../../../state/useColors.ts';

/** Lines to draw, each as the corners of one: [3 · points] m. */
export interface TrackLines {
  readonly straight: readonly (readonly number[])[];
  readonly bent: readonly (readonly number[])[];
  /** places of collisions, [3 · places] m */
  readonly collisions: readonly number[];
  /** heads of atoms under way, and where others ended on the mirror, [3 · places] m */
  readonly heads: readonly number[];
}

/** From where the tank is looked at. */
export type ViewName = 'whole' | 'side' | 'axis';

export interface TracksView {
  readonly setTracks: (lines: TrackLines) => void;
  readonly paint: (colors: Colors) => void;
  readonly look: (view: ViewName) => void;
  readonly turn: (azimuth: number) => void;
  readonly resize: (width: number, height: number) => void;
  readonly dispose: () => void;
}

const UPRIGHTS = 12;
const FACE_RINGS = 4;
const FIELD_OF_VIEW = 30;
/** Directions from the tank to the camera; the one along the axis leans by less than is seen, so that "up" stays defined. */
const DIRECTIONS: Readonly<Record<ViewName, Vector3>> = {
  whole: new Vector3(-0.42, -1, 0.5).normalize(),
  side: new Vector3(0, -1, 0),
  axis: new Vector3(0, -1e-4, 1).normalize(),
};
/** Radius of what must fit into the picture over that of the sphere about the tank. */
const FILL = 1.02;

/** A closed or open line as pairs of corners. */
function pairs(corners: ArrayLike<number>): number[] {
  const out: number[] = [];
  for (let o = 3; o < corners.length; o += 3) for (let k = -3; k < 3; k++) out.push(corners[o + k]!);
  return out;
}

function geometryOf(position: readonly number[]): BufferGeometry {
  return new BufferGeometry().setAttribute('position', new Float32BufferAttribute(position, 3));
}

function tankLines({ tank }: Plant): number[] {
  const at = (i: number, z: number): number[] => {
    const angle = (2 * Math.PI * i) / 96;
    return [tank.centerX + tank.radius * Math.cos(angle), tank.radius * Math.sin(angle), z];
  };
  const rims = [tank.lowZ, tank.highZ].flatMap((z) => pairs(Array.from({ length: 97 }, (_, i) => at(i, z)).flat()));
  const uprights = Array.from({ length: UPRIGHTS }, (_, i) => {
    const place = (96 / UPRIGHTS) * i;
    return [...at(place, tank.lowZ), ...at(place, tank.highZ)];
  }).flat();
  return [...rims, ...uprights];
}

/** Circles on the face, from the hole or the middle to the rim. */
function faceLines({ shape }: Plant): number[] {
  return Array.from({ length: FACE_RINGS + 1 }, (_, i) => {
    const radius = shape.holeRadius + ((shape.rimRadius - shape.holeRadius) * i) / FACE_RINGS;
    return radius > 0 ? pairs(circleOnFace(shape, radius, 0)) : [];
  }).flat();
}

/** Each filament as a short line along its coil, never shorter than can be seen. */
function coilLines({ filaments, tank }: Plant): number[] {
  return filaments.flatMap(({ center, coilAxis, length }) => {
    const half = Math.max(length / 2, 0.012 * tank.radius);
    return [-half, half].flatMap((t) => center.map((c, k) => c + t * coilAxis[k]!));
  });
}

function obstacleMeshes({ solids }: Plant, material: MeshBasicMaterial): Mesh[] {
  return Array.from({ length: solids.count }, (_, i) => {
    const mesh = new Mesh(localSolid(solids, i).geometry(), material);
    mesh.matrixAutoUpdate = false;
    mesh.matrix.copy(placeOfSolid(solids, i));
    return mesh;
  });
}

/**
 * Draws into a canvas.
 *
 * @throws Error if the browser has no WebGL
 */
export function createTracksView(canvas: HTMLCanvasElement, plant: Plant): TracksView {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  const scene = new Scene();
  const camera = new PerspectiveCamera(FIELD_OF_VIEW, 1, 0.02 * plant.tank.radius, 60 * plant.tank.radius);
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, canvas);
  controls.enablePan = false;
  const line = (): LineBasicMaterial => new LineBasicMaterial({ transparent: true });
  const wall = new LineSegments(geometryOf(tankLines(plant)), line());
  const face = new LineSegments(geometryOf(faceLines(plant)), line());
  const coils = new LineSegments(geometryOf(coilLines(plant)), line());
  const glass = new Mesh(
    glassGeometry(plant.shape),
    new MeshBasicMaterial({ transparent: true, opacity: 0.35, side: DoubleSide, depthWrite: false }),
  );
  const solid = new MeshBasicMaterial({ transparent: true, opacity: 0.5, side: DoubleSide, depthWrite: false });
  const straight = new LineSegments(new BufferGeometry(), line());
  const bent = new LineSegments(new BufferGeometry(), line());
  const dot = (size: number): PointsMaterial => new PointsMaterial({ size, sizeAttenuation: false });
  const collisions = new Points(new BufferGeometry(), dot(4));
  const heads = new Points(new BufferGeometry(), dot(7));
  const lifted = [straight, bent, collisions, heads];
  for (const object of lifted) object.frustumCulled = false;
  scene.add(wall, glass, face, coils, ...obstacleMeshes(plant, solid), ...lifted);

  let requested = 0;
  let hasSize = false;
  let view: ViewName = 'whole';
  let isTurned = false;
  const draw = (): void => {
    requested = 0;
    if (hasSize) renderer.render(scene, camera);
  };
  const invalidate = (): void => {
    requested ||= requestAnimationFrame(draw);
  };
  controls.addEventListener('change', invalidate);
  controls.addEventListener('start', () => (isTurned = true));
  const settle = (): void => {
    const { radius, lowZ, highZ, centerX } = plant.tank;
    const narrow = Math.atan(Math.tan((FIELD_OF_VIEW * Math.PI) / 360) * Math.min(1, camera.aspect));
    const away = (FILL * Math.hypot(radius, (highZ - lowZ) / 2)) / Math.sin(narrow);
    controls.target.set(centerX, 0, (lowZ + highZ) / 2);
    camera.position.copy(controls.target).addScaledVector(DIRECTIONS[view], away);
    controls.update();
    invalidate();
  };
  return {
    setTracks: (lines) => {
      const put = (object: LineSegments | Points, position: readonly number[]): void => {
        object.geometry.dispose();
        object.geometry = geometryOf(position);
      };
      put(straight, lines.straight.flatMap(pairs));
      put(bent, lines.bent.flatMap(pairs));
      put(collisions, lines.collisions);
      put(heads, lines.heads);
      invalidate();
    },
    paint: (colors) => {
      const paint = (material: { readonly color: Color }, name: keyof Colors): void =>
        void material.color.set(colors[name]);
      paint(wall.material, 'scene-edge');
      paint(glass.material, 'scene-glass');
      paint(face.material, 'scene-edge');
      paint(coils.material, 'scene-coil');
      paint(solid, 'scene-solid');
      paint(straight.material, 'accent');
      paint(bent.material, 'text');
      paint(collisions.material, 'text');
      paint(heads.material, 'scene-mark');
      invalidate();
    },
    look: (wanted) => {
      view = wanted;
      isTurned = false;
      settle();
    },
    turn: (azimuth) => {
      isTurned = true;
      const offset = camera.position.clone().sub(controls.target).applyAxisAngle(camera.up, azimuth);
      camera.position.copy(controls.target).add(offset);
      controls.update();
      invalidate();
    },
    resize: (width, height) => {
      if (width === 0 || height === 0) return;
      hasSize = true;
      renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
      renderer.setSize(width, height, false);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      if (isTurned) invalidate();
      else settle();
    },
    dispose: () => {
      cancelAnimationFrame(requested);
      controls.dispose();
      scene.traverse((object) => {
        if (object instanceof Mesh || object instanceof LineSegments || object instanceof Points)
          object.geometry.dispose();
      });
      renderer.dispose();
      renderer.forceContextLoss(); // browsers keep few contexts, and each lesson with tracks asks for one
    },
  };
}
