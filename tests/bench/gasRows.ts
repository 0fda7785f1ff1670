/** Figures of scattering in residual gas: flights in good vacuum, collisions in bad, and a whole answer. */
import { pureGas } from '../../engine/gas/gases.ts';
import { scatter } from '../../engine/gas/scatter.ts';
import { prepareScatter, scatterProblemOf } from '../../engine/gas/scatterProblem.ts';
import { flyChunk } from '../../engine/gas/tally.ts';
import { openPlantFile } from '../../engine/plant/openPlant.ts';
import type { Plant } from '../../engine/plant/plant.ts';
import { benchDesign } from './benchDesign.ts';
import type { Row } from './row.ts';

const MBAR = 100;
const ROOM = 293.15;
/** Each figure is the best of so many stretches of processor time, so that a busy machine counts less. */
const STRETCHES = 5;
const STRETCH_SECONDS = 0.3;

/** Processor time since a moment, s. */
function spent(since: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1e6;
}

/** Atoms and collisions a second in air of a pressure, one core. */
async function paceAt(
  plant: Plant,
  pressure: number,
): Promise<{ readonly atoms: number; readonly collisions: number }> {
  const prepared = await prepareScatter(scatterProblemOf(plant, { gas: pureGas('air', pressure, ROOM) }));
  const best = { atoms: 0, collisions: 0 };
  let chunk = 0;
  for (let k = 0; k <= STRETCHES; k++) {
    let [atoms, collisions] = [0, 0];
    const start = process.cpuUsage();
    let elapsed = 0;
    do {
      const tally = flyChunk(prepared, chunk++);
      atoms += tally.atoms;
      collisions += tally.collisions;
      elapsed = spent(start);
    } while (elapsed < STRETCH_SECONDS);
    if (k === 0) continue; // warms up
    best.atoms = Math.max(best.atoms, atoms / elapsed);
    best.collisions = Math.max(best.collisions, collisions / elapsed);
  }
  return best;
}

const millions = (value: number): string => `${(value / 1e6).toFixed(2)} million/s`;

/** Flights and collisions a second on one core, and the time to one percent in each cell at 1e-4 mbar. */
export async function gasRows(): Promise<Row[]> {
  const opened = openPlantFile(benchDesign());
  if (!opened.ok) throw new Error(opened.problems.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  const { plant } = opened;
  const good = await paceAt(plant, 1e-6 * MBAR);
  const usual = await paceAt(plant, 1e-5 * MBAR);
  const bad = await paceAt(plant, 1e-2 * MBAR);
  const worst = await paceAt(plant, MBAR);
  const start = process.cpuUsage();
  const { tally, summary } = await scatter(scatterProblemOf(plant, { gas: pureGas('air', 1e-4 * MBAR, ROOM) }));
  const seconds = spent(start);
  const error = `${(100 * summary.cellError).toFixed(2)} %`;
  return [
    { what: 'atom flights at 1e-6 mbar, one core', figure: millions(good.atoms), goal: '≥ 1 million/s' },
    { what: 'atom flights at 1e-5 mbar, one core', figure: millions(usual.atoms), goal: '≥ 1 million/s' },
    { what: 'collisions at 1e-2 mbar, one core', figure: millions(bad.collisions), goal: '≥ 3 million/s' },
    { what: 'collisions at 1 mbar, one core', figure: millions(worst.collisions), goal: '≥ 3 million/s' },
    { what: 'whole flights at 1 mbar with leaps, one core', figure: `${worst.atoms.toFixed(0)}/s`, goal: '' },
    {
      what: `scattering at 1e-4 mbar to ${error} a cell, ${tally.atoms} atoms`,
      figure: `${seconds.toFixed(1)} s`,
      goal: '',
    },
  ];
}
