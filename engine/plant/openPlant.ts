/** The door of the engine: from the text of a design file to a plant, or to everything wrong with it. */
import { decodeBase64 } from '../design/base64.ts';
import { checkDesign, type NamedFiles } from '../design/checkDesign.ts';
import type { Design, DesignFile, ObstacleDesign, WitnessDesign } from '../design/designSchema.ts';
import { migrate } from '../design/migrate.ts';
import { shortened, type Problem } from '../design/problem.ts';
import { quoteValue } from '../design/quantity.ts';
import { readJson } from '../design/readJson.ts';
import { readStl, type Triangles } from '../geometry/stl.ts';
import { isOnGlass, mirrorShape, surfacePointInto, type MirrorShape } from '../geometry/mirrorShape.ts';
import { packSolids } from '../geometry/solids.ts';
import { tankOf } from '../geometry/tank.ts';
import { checkPlant } from './checkPlant.ts';
import { placeFilaments } from './placeFilaments.ts';
import type { Plant, Witness } from './plant.ts';

export type OpenedPlant =
  | { readonly ok: true; readonly file: DesignFile; readonly plant: Plant }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const METRES_PER = { m: 1, cm: 0.01, mm: 0.001, in: 0.0254 } as const;
const NO_FILES: NamedFiles = new Map();

/**
 * Opens a design from text.
 *
 * @param files content of the files that the design names (see namedFiles)
 * @returns the plant and its file in the current version, or every problem with its path; never half of one
 */
export function openPlant(text: string, files: NamedFiles = NO_FILES): OpenedPlant {
  const read = readJson(text);
  return read.ok ? openPlantFile(read.value, files) : { ok: false, problems: shortened(read.problems) };
}

/** Opens a design from an object, such as an edited file; never throws. */
export function openPlantFile(value: unknown, files: NamedFiles = NO_FILES): OpenedPlant {
  const migrated = migrate(value);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  const { problems: formProblems, parts, design } = checkDesign(migrated.file, files);
  const problems = [...formProblems, ...checkPlant(parts)];
  const meshes = readMeshes(parts.obstacles, files, problems);
  if (problems.length > 0 || !design) return { ok: false, problems: shortened(problems) };
  return { ok: true, file: migrated.file as DesignFile, plant: assemble(design, meshes) };
}

/** Reads the meshes of all obstacles; adds what is wrong with them to the problems. */
function readMeshes(
  obstacles: readonly (ObstacleDesign | undefined)[],
  files: NamedFiles,
  problems: Problem[],
): Triangles[] {
  return obstacles.flatMap((obstacle, i) => {
    if (obstacle?.shape !== 'mesh') return [];
    if ((obstacle.file === undefined) === (obstacle.data === undefined)) return []; // reported by checkPlant
    const path = `obstacles[${i}].${obstacle.file === undefined ? 'data' : 'file'}`;
    const bytes = obstacle.file === undefined ? decodeBase64(obstacle.data ?? '') : files.get(obstacle.file);
    if (!bytes) {
      problems.push({
        path,
        message:
          obstacle.file === undefined
            ? `expected an STL file as base64 text; found ${quoteValue(obstacle.data)}`
            : `the file ${quoteValue(obstacle.file)} is not there`,
      });
      return [];
    }
    try {
      return [
        readStl(bytes, {
          scale: METRES_PER[obstacle.unit],
          position: obstacle.position ?? [0, 0, 0],
          rotation: obstacle.rotation,
        }),
      ];
    } catch (error) {
      problems.push({ path, message: error instanceof Error ? error.message : 'expected an STL file' });
      return [];
    }
  });
}

function placeWitness(witness: WitnessDesign, shape: MirrorShape): Witness {
  const area = (Math.PI / 4) * witness.diameter ** 2;
  if (witness.position) {
    return {
      name: witness.name,
      position: witness.position,
      normal: witness.normal ?? [0, 0, 1],
      area,
      onGlass: false,
    };
  }
  const [radius, angle] = [witness.radius ?? 0, witness.angle ?? 0];
  const x = shape.centerX + radius * Math.cos(angle);
  const y = radius * Math.sin(angle);
  const position = new Float64Array(3);
  const normal = new Float64Array(3);
  surfacePointInto(position, normal, 0, shape, x, y);
  return {
    name: witness.name,
    position: [...position] as [number, number, number],
    normal: [...normal] as [number, number, number],
    area,
    onGlass: isOnGlass(shape, x, y),
  };
}

function assemble(design: Design, meshes: readonly Triangles[]): Plant {
  const shape = mirrorShape(design.mirror);
  const solid = design.obstacles.flatMap((obstacle) => (obstacle.shape === 'mesh' ? [] : [obstacle]));
  const meshed = design.obstacles.filter(({ shape: kind }) => kind === 'mesh');
  return {
    name: design.name,
    story: design.story ?? null,
    shape,
    tank: tankOf(design.tank, shape),
    setNames: design.filaments.map(({ name }) => name),
    filaments: design.filaments.flatMap((set, i) => {
      const type = design.filamentTypes[set.type];
      return type ? placeFilaments(set, i, type, shape) : [];
    }),
    obstacleNames: [...solid, ...meshed].map(({ name }) => name),
    solids: packSolids(solid),
    meshes,
    witnesses: design.witnesses.map((witness) => placeWitness(witness, shape)),
    vacuum: design.vacuum,
    film: design.film,
    firing: design.firing,
  };
}
