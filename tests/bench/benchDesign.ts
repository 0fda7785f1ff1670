/** The plant of the benchmarks: rings of six-loop filaments over a 2.6 m mirror. */
export interface BenchOptions {
  readonly rings?: number;
  /** filaments on each ring */
  readonly count?: number;
  readonly obstacles?: number;
  readonly emission?: { readonly law: string };
}

/** A design with rings × count filaments of six loops: 96 filaments, 576 sub-sources, unless told otherwise. */
export function benchDesign({
  rings = 2,
  count = 48,
  obstacles = 0,
  emission = { law: 'open coil' },
}: BenchOptions = {}): Readonly<Record<string, unknown>> {
  return {
    format: 'evenfall',
    version: 1,
    name: 'Bench plant',
    mirror: { radiusOfCurvature: '11.96 m', conicConstant: -1, outerDiameter: '2.6 m', holeDiameter: '0.55 m' },
    tank: { diameter: '3.4 m', depth: '2.0 m' },
    filamentTypes: { six: { loops: 6, length: '64 mm', clipMass: '45 mg', emission } },
    filaments: Array.from({ length: rings }, (_, i) => ({
      arrangement: 'ring',
      name: `ring ${i + 1}`,
      type: 'six',
      count,
      diameter: `${2.9 - i} m`,
      height: `${0.9 + 0.1 * i} m`,
    })),
    obstacles: Array.from({ length: obstacles }, (_, i) => obstacle(i)),
  };
}

/** Three rods between filaments and mirror, the rest near the wall above the filaments. */
function obstacle(i: number): object {
  const angle = 2.4 * i;
  const [radius, height] = i < 3 ? [0.6, 0.4] : [1.5, 1.3];
  const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
  return {
    shape: 'cylinder',
    name: `rod ${i + 1}`,
    from: [`${x} m`, `${y} m`, `${height} m`],
    to: [`${x + 0.1} m`, `${y} m`, `${height + 0.2} m`],
    diameter: '30 mm',
  };
}
