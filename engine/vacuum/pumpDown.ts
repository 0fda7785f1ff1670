/** The pump-down of a tank: from the atmosphere to the firing pressure and beyond. */
import { timedLoads, type TimedLoad } from './loads.ts';
import type { GasBalance, LoadCurve, PumpDownCurve } from './pumpDownCurve.ts';
import { AIR, SPECIES_COUNT, WATER } from './species.ts';
import { stiffStepper, type StiffStepper } from './stiff.ts';
import { suctionReading } from './suction.ts';
import type { PumpSystem } from './system.ts';
import { ADMITTED, BACK, FIRST_LOAD, REMOVED, tankEquations } from './tankEquations.ts';
import { endGlow, EVENT_TOLERANCE, fireDue, nextPressure, startRun, sum, type Run } from './valves.ts';
import type { Venting } from './water.ts';

export interface PumpDownOptions {
  /** Pa wanted; the system's firing pressure unless given */
  readonly until?: number;
  /** how the tank stood open, instead of what the system says */
  readonly vent?: Venting;
  /** Pa in the tank at the start; atmospheric unless given */
  readonly from?: number;
  /** s after which the wanted pressure counts as never reached; thirty days unless given */
  readonly longest?: number;
}

const ATMOSPHERE = 101325;
const DAY = 86400;
/** Water vapour in room air at half of saturation and 20 °C, Pa. */
const ROOM_WATER = 1170;

/** Error of one step over a partial pressure; the sum of all steps stays below 1e-5. */
const TOLERANCE = 1e-6;
/** A partial pressure smaller than this share of the total need not be more exact than this share is. */
const SMALL_SHARE = 1e-4;
/** Longest step over time: keeps some 25 points to a decade for the chart. */
const LONGEST_STEP = 0.1;
/** The curve goes on to this many times the time at which the wanted pressure was reached. */
const BEYOND = 3;
const MOST_STEPS = 20_000;

/** Gas in the tank at the start: room air with its moisture, or dry. */
function startPressures(from: number, { air }: Venting): Float64Array {
  const y = new Float64Array(SPECIES_COUNT);
  y[WATER] = air === 'humid' ? (ROOM_WATER * from) / ATMOSPHERE : 0;
  y[AIR] = from - y[WATER];
  return y;
}

/** Grows along a run and becomes the curve. */
function recorder(loads: readonly TimedLoad[]) {
  const reading = suctionReading();
  const one = new Float64Array(SPECIES_COUNT);
  const time: number[] = [];
  const stage: number[] = [];
  const stages: (readonly string[])[] = [];
  const partial: number[][] = Array.from({ length: SPECIES_COUNT }, () => []);
  const speed: number[][] = Array.from({ length: SPECIES_COUNT }, () => []);
  const flow: number[][] = Array.from({ length: loads.length + 2 }, () => []);

  /** Notes the state of a run; a second note at the same time replaces the first. */
  function note(run: Run): void {
    const i = time.at(-1) === run.time ? time.length - 1 : time.length;
    run.phase.suction.readInto(reading, sum(run.y));
    time[i] = run.time;
    if (stages.at(-1) !== run.phase.suction.open) stages.push(run.phase.suction.open);
    stage[i] = stages.length - 1;
    let change = reading.backflow;
    for (let k = 0; k < SPECIES_COUNT; k++) {
      partial[k]![i] = run.y[k]!;
      speed[k]![i] = reading.speed[k]!;
      change -= reading.speed[k]! * run.y[k]!;
    }
    loads.forEach(({ flowInto }, k) => {
      flowInto(one, run.time);
      flow[k]![i] = sum(one);
      change += sum(one);
    });
    flow[loads.length]![i] = reading.backflow;
    flow[loads.length + 1]![i] = run.phase.isHeld ? -change : 0;
  }

  function finish(run: Run, until: number, balance: GasBalance): PumpDownCurve {
    const kinds: Pick<LoadCurve, 'name' | 'kind'>[] = [
      ...loads,
      { name: 'back from the pumps', kind: 'pumps' },
      { name: 'let in for the glow discharge', kind: 'admitted' },
    ];
    const partials = partial.map((values) => Float64Array.from(values));
    return {
      count: time.length,
      time: Float64Array.from(time),
      pressure: Float64Array.from(time, (_, i) => partials.reduce((p, values) => p + values[i]!, 0)),
      partial: partials,
      speed: speed.map((values) => Float64Array.from(values)),
      stage: Int32Array.from(stage),
      stages,
      loads: kinds.map(({ name, kind }, k) => ({ name, kind, flow: Float64Array.from(flow[k]!) })),
      events: run.events,
      until,
      reachedAt: run.reachedAt,
      balance,
    };
  }

  return { note, finish };
}

/** Scale of errors, by species. */
function scaleInto(out: Float64Array, y: Float64Array): void {
  const least = SMALL_SHARE * sum(y);
  for (let i = 0; i < SPECIES_COUNT; i++) out[i] = TOLERANCE * Math.max(Math.abs(y[i]!), least);
}

/**
 * Step after which the total pressure is at a target that it passes within h.
 *
 * @returns h of the last step made, so that the stepper holds its result
 */
function stepToPressure(stepper: StiffStepper, run: Run, h: number, scale: Float64Array, target: number): number {
  const miss = (step: number): number => {
    stepper.step(run.time, run.y, step, scale);
    return Math.log(sum(stepper.y) / target);
  };
  let [low, atLow] = [0, Math.log(sum(run.y) / target)];
  let [high, atHigh] = [h, Math.log(sum(stepper.y) / target)];
  let step = h;
  for (let i = 0; i < 80; i++) {
    step = (low * atHigh - high * atLow) / (atHigh - atLow);
    const found = miss(step);
    if (Math.abs(found) < EVENT_TOLERANCE || high - low < EVENT_TOLERANCE * h) break;
    // Illinois: halve the value at an end that has stayed
    if (found > 0) [low, atLow, atHigh] = [step, found, atHigh / 2];
    else [high, atHigh, atLow] = [step, found, atLow / 2];
  }
  return step;
}

/**
 * Pumps a tank down.
 *
 * Integrates the partial pressures of air, water and other gases from the atmosphere on (see tankEquations),
 * opens and closes valves at their pressures, holds the glow discharge, and goes on for three times the time
 * that the wanted pressure took, or to the longest time if it is not reached. Times of events are exact to the
 * error of the integration, 1e-5 of the pressure.
 *
 * @throws RangeError if a pressure or a time is not above zero, or the start is above 1.1 atmospheres
 */
export function pumpDown(system: PumpSystem, options: PumpDownOptions = {}): PumpDownCurve {
  const { until = system.firingPressure, vent = system.venting, from = ATMOSPHERE, longest = 30 * DAY } = options;
  checkOptions(until, from, longest);
  const loads = timedLoads(system, vent);
  const run = startRun(system, startPressures(from, vent), until);
  const problem = tankEquations(system.volume, loads, run.phase);
  const stepper = stiffStepper(problem);
  const integrals = new Float64Array(problem.integralCount);
  const scale = new Float64Array(SPECIES_COUNT);
  const record = recorder(loads);
  const reading = suctionReading();
  /** time in which the open pumps would empty the tank, s */
  const emptying = (): number => {
    run.phase.suction.readInto(reading, sum(run.y));
    return system.volume / Math.max(...reading.speed, Number.MIN_VALUE);
  };
  const first = Math.min(1e-3 * emptying(), longest);
  let h = first;
  record.note(run);
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    if (fireDue(run, system)) {
      record.note(run);
      h = Math.min(h, 1e-2 * emptying());
    }
    const end =
      run.reachedAt === null ? longest : Math.min(longest, Math.max(BEYOND * run.reachedAt, run.reachedAt + first));
    if (run.time >= end) break;
    scaleInto(scale, run.y);
    const most = Math.min(end, run.glowEnds) - run.time;
    h = Math.min(h, most, LONGEST_STEP * run.time + first);
    const error = stepper.step(run.time, run.y, h, scale);
    if (error > 1) {
      h *= error === Infinity ? 0.2 : Math.max(0.2, 0.9 * error ** -0.25);
      continue;
    }
    const target = nextPressure(run);
    const isPassing = sum(stepper.y) < target;
    const made = isPassing ? stepToPressure(stepper, run, h, scale, target) : h;
    // what has all but gone may end a little below zero, far within its error
    for (let k = 0; k < SPECIES_COUNT; k++) run.y[k] = Math.max(0, stepper.y[k]!);
    for (let k = 0; k < integrals.length; k++) integrals[k]! += stepper.integrals[k]!;
    run.time = !isPassing && h === most ? run.time + most : run.time + made;
    if (run.glow === 'burning' && run.time >= run.glowEnds * (1 - EVENT_TOLERANCE)) endGlow(run);
    record.note(run);
    h *= Math.min(4, Math.max(0.2, 0.9 * (error || 1e-8) ** -0.25));
  }
  return record.finish(run, until, balanceOf(system.volume, from, run, integrals));
}

function balanceOf(volume: number, from: number, run: Run, integrals: Float64Array): GasBalance {
  let brought = integrals[BACK]! + integrals[ADMITTED]!;
  for (let k = FIRST_LOAD; k < integrals.length; k++) brought += integrals[k]!;
  return { atStart: volume * from, atEnd: volume * sum(run.y), removed: integrals[REMOVED]!, brought };
}

function checkOptions(until: number, from: number, longest: number): void {
  const check = (name: string, value: number, most: number, saying: string): void => {
    if (!(value > 0 && value <= most)) throw new RangeError(`${name}: expected ${saying}; found ${value}`);
  };
  check('until', until, 1.1 * ATMOSPHERE, 'a pressure above zero and at most atmospheric, in Pa');
  check('from', from, 1.1 * ATMOSPHERE, 'a pressure above zero and at most atmospheric, in Pa');
  check('longest', longest, Number.MAX_VALUE, 'a time above zero, in s');
}
