/** What limits a pump-down: the load that counts, the speed that meets it, and what would help. */
import type { Mixture } from '../gas/gases.ts';
import { readNodes } from './logTable.ts';
import type { LoadKind } from './loads.ts';
import { pumpDown, type PumpDownOptions } from './pumpDown.ts';
import type { PumpDownCurve } from './pumpDownCurve.ts';
import type { Pump } from './pumps.ts';
import { AIR, OTHER, WATER } from './species.ts';
import type { PumpSystem } from './system.ts';
import { MBAR_WORDS, shareWords, timeWords, type VacuumWords } from './words.ts';

/** A load at one time. */
export interface LoadShare {
  readonly name: string;
  readonly kind: LoadKind;
  /** Pa·m³/s */
  readonly flow: number;
  /** of all loads at this time */
  readonly share: number;
}

/** All loads at the i-th time of a curve, largest first. */
export function loadShares({ loads }: PumpDownCurve, i: number): LoadShare[] {
  const whole = loads.reduce((total, { flow }) => total + flow[i]!, 0);
  return loads
    .map(({ name, kind, flow }) => ({ name, kind, flow: flow[i]!, share: whole > 0 ? flow[i]! / whole : 0 }))
    .toSorted((a, b) => b.flow - a.flow);
}

/** A pump at one time. */
export interface PumpShare {
  readonly name: string;
  /** m³/s at its inlet, as rated */
  readonly rated: number;
  /** m³/s for air at the tank */
  readonly effective: number;
}

/** What holds the pressure where it is. */
export interface Limit {
  /** Pa, total */
  readonly pressure: number;
  readonly loads: readonly LoadShare[];
  /** m³/s: all gas that is taken out over the pressure */
  readonly speed: number;
  /** share of the gas taken out that was in the tank before, rather than brought by a load */
  readonly emptying: number;
  readonly pumps: readonly PumpShare[];
}

/** What limits the pressure at the i-th time of a curve. */
export function limitAt(system: PumpSystem, curve: PumpDownCurve, i: number): Limit {
  const pressure = curve.pressure[i]!;
  const loads = loadShares(curve, i);
  const open = curve.stages[curve.stage[i]!] ?? [];
  const pumped = curve.speed.reduce((flow, speed, k) => flow + speed[i]! * curve.partial[k]![i]!, 0);
  const brought = loads.reduce((total, { flow }) => total + flow, 0);
  return {
    pressure,
    loads,
    speed: pumped / pressure,
    emptying: pumped > 0 ? Math.max(0, 1 - brought / pumped) : 0,
    pumps: system.pumps
      .filter(({ name }) => open.includes(name))
      .map((pump) => ({ name: pump.name, rated: pump.ratedSpeed, effective: readNodes(pump.speeds[AIR]!, pressure) })),
  };
}

/** The residual gas at the i-th time of a curve, as shares; what is neither air nor water counts as nitrogen. */
export function residualMixture({ partial, pressure }: PumpDownCurve, i: number): Mixture {
  return {
    air: partial[AIR]![i]! / pressure[i]!,
    H2O: partial[WATER]![i]! / pressure[i]!,
    N2: partial[OTHER]![i]! / pressure[i]!,
  };
}

const LOAD_VERBS: Readonly<Record<LoadKind, string>> = {
  leak: 'lets in',
  surface: 'gives off',
  pumps: 'brings',
  admitted: 'brings',
};

const LOAD_NAMES: Readonly<Record<LoadKind, (name: string) => string>> = {
  leak: () => 'the leak',
  surface: (name) => `the surface “${name}”`,
  pumps: () => 'what comes back from the pumps',
  admitted: () => 'the gas let in',
};

/** Beyond this share of old gas, the pumps and not the loads set the pressure. */
const STILL_EMPTYING = 0.5;

/** "the surface “door seal” gives off 3.1e-3 mbar l/s, 64 % of all, against 900 l/s". */
export function limitWords({ loads, speed, emptying }: Limit, words: VacuumWords = MBAR_WORDS): string {
  const [first] = loads;
  if (!first || first.flow === 0) return `nothing brings gas; the pumps take ${words.speed(speed)}`;
  if (emptying > STILL_EMPTYING)
    return `the pumps, ${words.speed(speed)}, are still emptying the tank: ${shareWords(1 - emptying)} of what they take comes from leak and surfaces`;
  const name = LOAD_NAMES[first.kind](first.name);
  return `${name} ${LOAD_VERBS[first.kind]} ${words.flow(first.flow)}, ${shareWords(first.share)} of all, against ${words.speed(speed)}`;
}

export interface PumpDownVerdict {
  readonly isReached: boolean;
  /** s; null if it is never reached */
  readonly time: number | null;
  /** Pa at the end of the curve */
  readonly floor: number;
  readonly limit: Limit;
  readonly sentence: string;
}

/** Why pressure stays above what the next valve waits for, if that is so. */
function stuckWords({ pumps, glow }: PumpSystem, curve: PumpDownCurve, words: VacuumWords): string | null {
  const floor = curve.pressure.at(-1)!;
  const open = curve.stages.at(-1) ?? [];
  const waiting = pumps.filter(
    ({ name, opens, isRoughing }) => !open.includes(name) && !isRoughing && opens < Infinity,
  );
  if (glow && !curve.events.some(({ kind }) => kind === 'glow starts') && glow.pressure < floor)
    return `the glow discharge waits for ${words.pressure(glow.pressure)}`;
  const [next] = waiting.filter(({ opens }) => opens < floor).toSorted((a, b) => b.opens - a.opens);
  if (next) return `the pump “${next.name}” opens only at ${words.pressure(next.opens)}`;
  return open.length === 0 ? 'every valve is closed' : null;
}

/** Whether a curve reaches what was wanted, when, and what stands in the way. */
export function verdictOf(system: PumpSystem, curve: PumpDownCurve, words: VacuumWords = MBAR_WORDS): PumpDownVerdict {
  const last = curve.count - 1;
  const floor = curve.pressure[last]!;
  const wanted = words.pressure(curve.until);
  if (curve.reachedAt !== null) {
    const i = curve.time.indexOf(curve.reachedAt);
    const limit = limitAt(system, curve, i < 0 ? last : i);
    const sentence = `Reaches ${wanted} after ${timeWords(curve.reachedAt)}; there, ${limitWords(limit, words)}.`;
    return { isReached: true, time: curve.reachedAt, floor, limit, sentence };
  }
  const limit = limitAt(system, curve, last);
  const stuck = stuckWords(system, curve, words);
  const after = `Never reaches ${wanted}: after ${timeWords(curve.time[last]!)} it is at ${words.pressure(floor)}`;
  const sentence = `${after}${stuck === null ? '' : `, ${stuck}`}; ${limitWords(limit, words)}.`;
  return { isReached: false, time: null, floor, limit, sentence };
}

/** A change and what it would bring. */
export interface Help {
  readonly change: string;
  /** s to the wanted pressure; null if it is still never reached */
  readonly time: number | null;
  readonly verdict: 'reaches' | 'faster' | 'no help';
}

/** Speeds of a pump times a factor, as if more of them stood there. */
const scaled = (pump: Pump, factor: number): Pump => ({
  ...pump,
  ratedSpeed: factor * pump.ratedSpeed,
  speeds: pump.speeds.map((table) => table.map((speed) => factor * speed)),
});

/** Less than this share of the time saved is no help worth telling. */
const WORTH_TELLING = 0.03;

/**
 * What would bring the wanted pressure sooner: no leak, each surface at a tenth, dry venting, twice the pumps.
 * Each is a pump-down of its own; the most helpful come first.
 */
export function whatHelps(system: PumpSystem, curve: PumpDownCurve, options: PumpDownOptions = {}): Help[] {
  const time = (changed: PumpSystem, more: PumpDownOptions = options): number | null =>
    pumpDown(changed, { ...more, until: curve.until }).reachedAt;
  const changes: [string, () => number | null][] = [
    ...(system.leak > 0 ? [['no leak', () => time({ ...system, leak: 0 })] as [string, () => number | null]] : []),
    ...system.surfaces.map((surface): [string, () => number | null] => [
      `a tenth of the gas from “${surface.name}”`,
      () =>
        time({
          ...system,
          surfaces: system.surfaces.map((one) => (one === surface ? { ...one, area: one.area / 10 } : one)),
        }),
    ]),
    [
      'venting with dry gas',
      () => time(system, { ...options, vent: { ...(options.vent ?? system.venting), air: 'dry' } }),
    ],
    [
      'twice the roughing pumps',
      () => time({ ...system, pumps: system.pumps.map((pump) => (pump.isRoughing ? scaled(pump, 2) : pump)) }),
    ],
    [
      'twice the high-vacuum pumps',
      () => time({ ...system, pumps: system.pumps.map((pump) => (pump.isRoughing ? pump : scaled(pump, 2))) }),
    ],
  ];
  return changes
    .map(([change, run]): Help => {
      const found = run();
      const before = curve.reachedAt;
      if (found === null) return { change, time: null, verdict: 'no help' };
      if (before === null) return { change, time: found, verdict: 'reaches' };
      return { change, time: found, verdict: found < before * (1 - WORTH_TELLING) ? 'faster' : 'no help' };
    })
    .toSorted((a, b) => (a.time ?? Infinity) - (b.time ?? Infinity));
}
