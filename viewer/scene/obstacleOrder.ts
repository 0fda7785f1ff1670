/** Which entry of the file each obstacle of a plant is: plants list solids first, then meshes. */
import type { DesignFile } from '../../engine/index.ts';

/** [obstacles of the plant] their indices in the file */
export function obstacleOrder({ obstacles = [] }: DesignFile): readonly number[] {
  const indices = obstacles.map((_, i) => i);
  const isMesh = (i: number): boolean => obstacles[i]?.shape === 'mesh';
  return [...indices.filter((i) => !isMesh(i)), ...indices.filter(isMesh)];
}
