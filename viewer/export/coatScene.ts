/** A coat and its plant as objects in metres, y up, for other 3D programs. */
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  Quaternion,
  SphereGeometry,
  Vector3,
  DoubleSide,
  type Object3D,
} from 'three';
import type { Coat, Plant } from '../../engine/index.ts';
import { faceTriangles } from '../../engine/geometry/face.ts';
import { colourAt, type PaletteName } from '../../workers/picture/paint.ts';
import { shareOn, type ValueScale } from '../../workers/picture/valueScale.ts';
import { coilGeometry } from '../scene/coilGeometry.ts';
import { glassGeometry } from '../scene/glassGeometry.ts';
import { localSolid, meshGeometry, placeOfSolid } from '../scene/solidGeometry.ts';

const PALETTE: PaletteName = 'even';
/** Radius of a witness's ball, as a share of the rim's. */
const WITNESS = 0.008;
const COIL_STEPS = 6;

/** Values with their scale, as colours of the coat. */
export interface SceneField {
  /** [points] */
  readonly values: Float64Array;
  readonly scale: ValueScale;
  /** what they are, such as "Thickness, nm" */
  readonly label: string;
}

const named = <T extends Object3D>(object: T, name: string): T => Object.assign(object, { name });

function coatMesh({ face }: Coat, { values, scale, label }: SceneField): Mesh {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(face.points.position), 3));
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(face.points.normal), 3));
  geometry.setIndex(new BufferAttribute(faceTriangles(face.cells), 1));
  const colours = new Float32Array(3 * face.points.count);
  const colour = new Color();
  values.forEach((value, i) => {
    // glTF stores linear colours: Color turns the sRGB of the palette into them
    colour.set(Number.isNaN(value) ? '#cecfd2' : colourAt(PALETTE, shareOn(scale, value)));
    colour.toArray(colours, 3 * i);
  });
  geometry.setAttribute('color', new BufferAttribute(colours, 3));
  const mesh = new Mesh(geometry, new MeshBasicMaterial({ vertexColors: true, side: DoubleSide }));
  mesh.userData = { label, low: scale.low, high: scale.high };
  return named(mesh, `Coat: ${label}, colours from ${scale.low} to ${scale.high}`);
}

function filamentMeshes({ filaments }: Plant): Mesh[] {
  const geometry = coilGeometry(COIL_STEPS);
  const firing = new MeshStandardMaterial({ color: '#2c333a' });
  const idle = new MeshStandardMaterial({ color: '#b0b5ba' });
  return filaments.map(({ name, center, coilAxis, length, charge, outOfUse }) => {
    const isIdle = outOfUse || !(charge > 0);
    const mesh = named(new Mesh(geometry, isIdle ? idle : firing), `Filament ${name}`);
    mesh.quaternion.copy(new Quaternion().setFromUnitVectors(new Vector3(1, 0, 0), new Vector3(...coilAxis)));
    mesh.position.set(...center);
    mesh.scale.setScalar(length);
    mesh.userData = { charge_kg: charge, outOfUse };
    return mesh;
  });
}

function obstacleMeshes({ solids, meshes, obstacleNames }: Plant): Mesh[] {
  const material = new MeshStandardMaterial({ color: '#8b939a', side: DoubleSide });
  const geometries = [
    ...Array.from({ length: solids.count }, (_, i) =>
      localSolid(solids, i).geometry().applyMatrix4(placeOfSolid(solids, i)),
    ),
    ...meshes.map(meshGeometry),
  ];
  return geometries.map((geometry, i) =>
    named(new Mesh(geometry, material), `Obstacle ${obstacleNames[i] ?? String(i + 1)}`),
  );
}

function witnessMeshes({ witnesses, shape }: Plant, thickness: Float64Array): Mesh[] {
  const geometry = new SphereGeometry(WITNESS * shape.rimRadius, 12, 8);
  const material = new MeshStandardMaterial({ color: '#ffffff' });
  return witnesses.map(({ name, position }, i) => {
    const mesh = named(new Mesh(geometry, material), `Witness ${name}`);
    mesh.position.set(...position);
    mesh.userData = { thickness_nm: (thickness[i] ?? NaN) * 1e9 };
    return mesh;
  });
}

/** Everything in the tank under one object. */
export function coatScene(coat: Coat, field: SceneField): Object3D {
  const { plant } = coat;
  const glass = new Mesh(glassGeometry(plant.shape), new MeshStandardMaterial({ color: '#b9c3c9', side: DoubleSide }));
  const scene = named(new Group(), plant.name);
  scene.add(coatMesh(coat, field), named(glass, 'Glass'));
  for (const [name, meshes] of [
    ['Filaments', filamentMeshes(plant)],
    ['Obstacles', obstacleMeshes(plant)],
    ['Witnesses', witnessMeshes(plant, coat.witnessThickness)],
  ] as const) {
    if (meshes.length > 0) scene.add(named(new Group(), name).add(...meshes));
  }
  scene.rotation.x = -Math.PI / 2; // +z of the mirror becomes +y, which is up in glTF
  return scene;
}
