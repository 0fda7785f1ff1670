/** The readable report of a coat. */
import { verdictOf, type Coat, type Estimate } from '../../engine/index.ts';

/** Digits of a value so that its error's first digit is the last one shown. */
function decimals(error: number, most: number): number {
  if (!(error > 0)) return most;
  return Math.min(most, Math.max(0, Math.ceil(-Math.log10(error))));
}

/** "99.8 ± 0.1 nm". */
function withError({ value, error }: Estimate, scale: number, unit: string, most = 3): string {
  const digits = decimals(error * scale, most);
  const shownError = Math.max(error * scale, 10 ** -digits);
  return `${(value * scale).toFixed(digits)} ± ${shownError.toFixed(digits)} ${unit}`;
}

function place([x, y]: readonly [number, number, number], centerX: number): string {
  const angle = (Math.atan2(y, x - centerX) * 180) / Math.PI;
  return `radius ${Math.hypot(x - centerX, y).toFixed(3)} m, ${((angle + 360) % 360).toFixed(1)}°`;
}

function table(rows: readonly (readonly [string, string])[]): string {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `  ${name.padEnd(width)}  ${value}`).join('\n');
}

/** The report as text, verdict first. */
export function report(coat: Coat): string {
  const { plant, statistics: s, budget } = coat;
  const { sentence, second } = verdictOf(coat);
  const inUse = plant.filaments.filter(({ outOfUse }) => !outOfUse).length;
  const toPercent = (mass: Estimate): Estimate => ({
    value: mass.value / (budget.evaporated || 1),
    error: mass.error / (budget.evaporated || 1),
  });
  const witnesses = plant.witnesses.map(({ name }, i): [string, string] => [
    name,
    `${((coat.witnessThickness[i] ?? 0) * 1e9).toFixed(2)} nm`,
  ]);
  const sections = [
    `${plant.name}\n\n${sentence}\n${second}`,
    `Statistics over the clear aperture (value ± numerical error)\n${table([
      ['mean thickness', withError(s.mean, 1e9, 'nm')],
      ['thinnest', `${withError(s.minimum, 1e9, 'nm')}, ${place(s.minimum.position, plant.shape.centerX)}`],
      ['thickest', `${withError(s.maximum, 1e9, 'nm')}, ${place(s.maximum.position, plant.shape.centerX)}`],
      ['uniformity', `± ${withError(s.uniformity, 100, '%')}`],
      ['RMS', withError(s.rms, 100, '%')],
      ['edge ratio', withError(s.edgeRatio, 1, '', 4).trim()],
      ['area within tolerance', withError(s.fractionInside, 100, '%', 2)],
      ['collected by the mirror', withError(s.collection, 100, '%')],
    ])}`,
    `Mass budget: ${(budget.evaporated * 1e3).toFixed(3)} g evaporated from ${inUse} of ${plant.filaments.length} filaments\n${table(
      [
        ...budget.items.map(({ name, mass }): [string, string] => [
          name,
          `${withError(mass, 1e3, 'g', 4)}  (${withError(toPercent(mass), 100, '%', 2)})`,
        ]),
        ...(budget.closure ? [closureRow(budget.closure)] : []),
      ],
    )}`,
    ...(witnesses.length > 0 ? [`Witnesses\n${table(witnesses)}`] : []),
    `Numerical errors only. The model: straight lines in perfect vacuum, sticking ${(100 * plant.film.sticking).toFixed(0)} %, film density ${plant.film.density} kg/m3; ${coat.face.points.count} points.`,
  ];
  return `${sections.join('\n\n')}\n`;
}

function closureRow({ value, error }: Estimate): [string, string] {
  return ['closes to', withError({ value: 1 + value, error }, 100, '%')];
}
