/** What a plant must satisfy beyond the form of its file: names, and whether everything fits. */
import type { SoundParts } from '../design/checkDesign.ts';
import { joinPath, type Problem } from '../design/problem.ts';
import { packSolids } from '../geometry/solids.ts';
import { tankOf } from '../geometry/tank.ts';
import { checkSets, checkType } from './checkFilaments.ts';
import { checkMirror, checkTank } from './checkMirror.ts';
import { checkObstacle, checkReach, checkWitness } from './checkPlaces.ts';
import type { Report } from './checkReport.ts';

/** Every problem of the sound parts of a design, checked against one another. */
export function checkPlant(parts: SoundParts): Problem[] {
  const problems: Problem[] = [];
  const report: Report = (path, message) => problems.push({ path, message });
  const shape = parts.mirror && checkMirror(parts.mirror, report);
  const tank = shape && parts.tank && checkTank(tankOf(parts.tank, shape), shape, report);
  for (const [name, type] of parts.filamentTypes) if (type) checkType(type, joinPath(['filamentTypes', name]), report);
  checkNames(parts.filaments, 'filaments', report);
  checkNames(parts.obstacles, 'obstacles', report);
  checkNames(parts.witnesses, 'witnesses', report);
  parts.obstacles.forEach((obstacle, i) => obstacle && checkObstacle(obstacle, `obstacles[${i}]`, report));
  const solid = parts.obstacles.flatMap((obstacle) => (obstacle && obstacle.shape !== 'mesh' ? [obstacle] : []));
  const place =
    shape && tank ? { shape, tank, solids: packSolids(solid), solidNames: solid.map(({ name }) => name) } : undefined;
  if (place) checkReach(parts.obstacles, place, report);
  checkSets(parts, place, report);
  parts.witnesses.forEach((witness, i) => witness && checkWitness(witness, `witnesses[${i}]`, place, report));
  return problems;
}

function checkNames(items: readonly ({ readonly name: string } | undefined)[], list: string, report: Report): void {
  const first = new Map<string, number>();
  items.forEach((item, i) => {
    if (!item) return;
    const before = first.get(item.name);
    if (before === undefined) first.set(item.name, i);
    else report(`${list}[${i}].name`, `the name "${item.name}" is taken by ${list}[${before}]; each needs its own`);
  });
}
