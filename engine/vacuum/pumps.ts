/** Pumps behind their lines: what each takes from the tank at every pressure. */
import type { PumpingDesign } from '../design/designSchema.ts';
import type { PumpKindName } from '../design/pumpingSchema.ts';
import { effectiveSpeed } from './conductance.ts';
import { lineConductance, lineOf, type Line } from './line.ts';
import { NODE_COUNT, NODE_PRESSURES, readLogPoints, readNodes } from './logTable.ts';
import { PUMP_KIND_TABLE, ROOTS_COMPRESSION } from './pumpKinds.ts';
import { AIR, SPECIES_COUNT, WATER } from './species.ts';

export type PumpDesign = PumpingDesign['pumps'][number];

/** One entry of the list of pumps: `count` of them side by side. */
export interface Pump {
  readonly name: string;
  readonly kind: PumpKindName;
  readonly count: number;
  /** m³/s for air, of all of them, at their inlets */
  readonly ratedSpeed: number;
  /** Pa */
  readonly ultimate: number;
  /** Pa: its valve opens at this tank pressure, Infinity if it is open from the start */
  readonly opens: number;
  /** Pa: its valve closes at this tank pressure, 0 if it stays open; roughing pumps wait for the glow discharge */
  readonly closes: number;
  readonly isRoughing: boolean;
  /** effective speed at the tank by species, m³/s, at NODE_PRESSURES */
  readonly speeds: readonly Float64Array[];
}

/** A valve that opens at this pressure or above is open from the start, Pa. */
const ATMOSPHERE = 1e5;

/** Of an inlet pressure; far below what any speed curve is known to. */
const SHARE_TOLERANCE = 1e-9;

/**
 * Where the speed of a pump meets the conductance of its line.
 *
 *     C(p̄) (p − pᵢ) = S(pᵢ) pᵢ,  p̄ = (p + pᵢ)/2
 *
 * @param guess inlet pressure over tank pressure, near the solution
 * @returns inlet pressure over tank pressure
 */
function inletShare(line: Line, speed: (pressure: number) => number, pressure: number, guess: number): number {
  const excess = (u: number): number =>
    lineConductance(line, AIR, (pressure * (1 + u)) / 2) * (1 - u) - speed(pressure * u) * u;
  let low = 0;
  let high = 1;
  let atLow = excess(1e-12);
  let atHigh = excess(1);
  if (!(atHigh < 0) || !(atLow > 0)) return atLow > 0 ? 1 : 1e-12;
  let u = guess > 0 && guess < 1 ? guess : 0.5;
  for (let i = 0; i < 60; i++) {
    const found = excess(u);
    // Illinois: halve the value at an end that has stayed, so that both ends close in
    if (found > 0) [low, atLow, atHigh] = [u, found, i > 0 && low > 0 ? atHigh / 2 : atHigh];
    else [high, atHigh, atLow] = [u, found, i > 0 && high < 1 ? atLow / 2 : atLow];
    if (high - low < SHARE_TOLERANCE * high || Math.abs(found) < SHARE_TOLERANCE * speed(pressure)) break;
    u = (low * atHigh - high * atLow) / (atHigh - atLow);
  }
  return u;
}

/** Speed of one pump alone at its inlet, for air, m³/s. */
function inletSpeed({ kind, speed, curve }: PumpDesign): (pressure: number) => number {
  if (curve) return (pressure) => readLogPoints(curve, pressure);
  const generic = PUMP_KIND_TABLE[kind].curve.map(([pressure, share]) => [pressure, share * speed] as const);
  return (pressure) => readLogPoints(generic, pressure);
}

const BACKING_ROUNDS = 6;

/**
 * Speed of a Roots pump in front of the pumps that back it.
 *
 *     S = S_R/(1 + S_R/(K S_B)),  S_B at the pressure between them, p_B = p S/S_B
 *
 * @param backing speed of the backing pumps for air, at NODE_PRESSURES
 * @see K. Jousten, Handbook of Vacuum Technology, volumetric efficiency of Roots pumps, from memory
 */
function backedSpeed(roots: number, backing: Float64Array, pressure: number): number {
  let between = pressure;
  // a few rounds suffice: the backing speed changes slowly with pressure
  for (let i = 0; i < BACKING_ROUNDS; i++) {
    const behind = readNodes(backing, between);
    if (behind <= 0) return 0;
    between = (pressure * roots) / (behind + roots / ROOTS_COMPRESSION);
  }
  return roots / (1 + roots / (ROOTS_COMPRESSION * readNodes(backing, between)));
}

/** Effective speeds of `count` pumps at the tank, by species. */
function speedsAtTank(design: PumpDesign, atInlet: (pressure: number) => number, temperature: number): Float64Array[] {
  const line = lineOf(design.line, temperature);
  const water = design.waterSpeed === undefined ? PUMP_KIND_TABLE[design.kind].water : design.waterSpeed / design.speed;
  const speeds = Array.from({ length: SPECIES_COUNT }, () => new Float64Array(NODE_COUNT));
  let share = 1;
  for (let i = 0; i < NODE_COUNT; i++) {
    const pressure = NODE_PRESSURES[i]!;
    if (design.line.length > 0) share = inletShare(line, atInlet, pressure, share);
    const own = atInlet(pressure * share);
    const mean = (pressure * (1 + share)) / 2;
    speeds.forEach((table, species) => {
      const speed = species === WATER ? own * water : own;
      table[i] = design.count * effectiveSpeed(speed, lineConductance(line, species, mean));
    });
  }
  return speeds;
}

function sumOfAir(pumps: readonly Pump[]): Float64Array {
  const sum = new Float64Array(NODE_COUNT);
  for (const { speeds } of pumps) speeds[AIR]!.forEach((speed, i) => (sum[i]! += speed));
  return sum;
}

/** Prepares the pumps of a system; rotary pumps back the Roots pumps. */
export function pumpsOf({ pumps, crossover }: PumpingDesign, temperature: number): Pump[] {
  const opensAt = ({ kind, from }: PumpDesign): number => {
    const { isRoughing, opensBelow } = PUMP_KIND_TABLE[kind];
    return from ?? (isRoughing ? opensBelow : Math.min(crossover, opensBelow));
  };
  // roughing ends where the first high-vacuum pump takes over, so that there is no gap
  const takeover = Math.max(0, ...pumps.filter(({ kind }) => !PUMP_KIND_TABLE[kind].isRoughing).map(opensAt));
  const prepared = new Map<PumpDesign, Pump>();
  const prepare = (design: PumpDesign, atInlet: (pressure: number) => number, least: number): void => {
    const { isRoughing, ultimate } = PUMP_KIND_TABLE[design.kind];
    const opens = opensAt(design);
    prepared.set(design, {
      name: design.name,
      kind: design.kind,
      count: design.count,
      ratedSpeed: design.count * design.speed,
      ultimate: Math.max(design.ultimate ?? ultimate, least),
      opens: opens >= ATMOSPHERE ? Infinity : opens,
      closes: design.until ?? (isRoughing ? takeover : 0),
      isRoughing,
      speeds: speedsAtTank(design, atInlet, temperature),
    });
  };
  for (const design of pumps) if (design.kind !== 'roots') prepare(design, inletSpeed(design), 0);
  const backers = [...prepared.values()].filter(({ kind }) => kind === 'rotary');
  const rootsCount = pumps.reduce((sum, { kind, count }) => sum + (kind === 'roots' ? count : 0), 0);
  const backing = sumOfAir(backers).map((speed) => speed / rootsCount);
  const backingUltimate = Math.min(...backers.map(({ ultimate }) => ultimate)) / ROOTS_COMPRESSION;
  for (const design of pumps) {
    if (design.kind !== 'roots') continue;
    const own = inletSpeed(design);
    prepare(design, (pressure) => backedSpeed(own(pressure), backing, pressure), backingUltimate);
  }
  return pumps.map((design) => prepared.get(design)!);
}
