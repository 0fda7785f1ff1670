/** Valves, trap and glow discharge: what happens when the tank has come down to some pressure. */
import type { Pump } from './pumps.ts';
import type { PumpDownEvent, PumpDownEventKind } from './pumpDownCurve.ts';
import { suctionOf } from './suction.ts';
import type { PumpSystem } from './system.ts';
import type { Phase } from './tankEquations.ts';

/** An event is found when ln p is this near to it. */
export const EVENT_TOLERANCE = 1e-12;

/** A pressure at which something happens once. */
export interface Trigger {
  readonly pressure: number;
  readonly waitsForGlow: boolean;
  readonly fire: () => void;
}

/** A pump-down under way. */
export interface Run {
  time: number;
  readonly y: Float64Array;
  readonly phase: Phase;
  readonly open: Set<Pump>;
  isTrapCold: boolean;
  glow: 'to come' | 'burning' | 'over';
  glowEnds: number;
  triggers: Trigger[];
  reachedAt: number | null;
  readonly events: PumpDownEvent[];
}

/** Total of the partial pressures. */
export const sum = (y: Float64Array): number => y[0]! + y[1]! + y[2]!;

/** A run at its start: valves that are open from the start, and everything that is to come. */
export function startRun(system: PumpSystem, y: Float64Array, until: number): Run {
  const open = new Set(system.pumps.filter(({ opens }) => opens === Infinity));
  const run: Run = {
    time: 0,
    y,
    phase: { suction: suctionOf([...open], 0), isHeld: false },
    open,
    isTrapCold: false,
    glow: system.glow ? 'to come' : 'over',
    glowEnds: Infinity,
    triggers: [],
    reachedAt: null,
    events: [],
  };
  setTriggers(run, system, until);
  return run;
}

/** Ends the glow discharge: the gas inlet closes. */
export function endGlow(run: Run): void {
  run.glow = 'over';
  run.glowEnds = Infinity;
  run.phase.isHeld = false;
  note(run, 'glow ends');
}

function note(run: Run, kind: PumpDownEventKind, name = ''): void {
  run.events.push({ kind, name, time: run.time, pressure: sum(run.y) });
}

/** Everything that happens when the tank has come down to some pressure. */
function setTriggers(run: Run, system: PumpSystem, until: number): void {
  const { pumps, coldTrap, glow } = system;
  let isCrossed = false;
  for (const pump of pumps) {
    if (pump.opens !== Infinity)
      addTrigger(run, pump.opens, !pump.isRoughing, () => {
        if (!pump.isRoughing && !isCrossed) note(run, 'crossover');
        isCrossed ||= !pump.isRoughing;
        run.open.add(pump);
        note(run, 'pump opens', pump.name);
      });
    if (pump.closes > 0)
      addTrigger(run, pump.closes, pump.isRoughing, () => {
        if (run.open.delete(pump)) note(run, 'pump closes', pump.name);
      });
  }
  if (coldTrap)
    addTrigger(run, coldTrap.from, false, () => {
      run.isTrapCold = true;
      note(run, 'trap cold');
    });
  addTrigger(run, until, false, () => {
    run.reachedAt = run.time;
    note(run, 'firing pressure');
  });
  if (!glow) return;
  addTrigger(run, glow.pressure, false, () => {
    run.glow = 'burning';
    run.glowEnds = run.time + glow.duration;
    run.phase.isHeld = true;
    note(run, 'glow starts');
  });
}

function addTrigger(run: Run, pressure: number, waitsForGlow: boolean, fire: () => void): void {
  run.triggers.push({ pressure, waitsForGlow, fire });
}

const isWaiting = (run: Run, { waitsForGlow }: Trigger): boolean =>
  run.glow === 'burning' || (run.glow === 'to come' && waitsForGlow);

/** Highest pressure below which something happens next. */
export function nextPressure(run: Run): number {
  return Math.max(0, ...run.triggers.filter((trigger) => !isWaiting(run, trigger)).map(({ pressure }) => pressure));
}

/** Fires what is due, highest pressure first; opening comes before closing at the same pressure. */
export function fireDue(run: Run, system: PumpSystem): boolean {
  const pressure = sum(run.y) * (1 - 2 * EVENT_TOLERANCE);
  let hasFired = false;
  for (let due = dueNext(run, pressure); due; due = dueNext(run, pressure)) {
    run.triggers = run.triggers.filter((trigger) => trigger !== due);
    due.fire();
    hasFired = true;
  }
  if (hasFired) renewSuction(run, system);
  return hasFired;
}

function dueNext(run: Run, pressure: number): Trigger | undefined {
  return run.triggers
    .filter((trigger) => trigger.pressure >= pressure && !isWaiting(run, trigger))
    .reduce<Trigger | undefined>(
      (best, trigger) => (best && best.pressure >= trigger.pressure ? best : trigger),
      undefined,
    );
}

function renewSuction(run: Run, { pumps, coldTrap }: PumpSystem): void {
  run.phase.suction = suctionOf(
    pumps.filter((pump) => run.open.has(pump)),
    run.isTrapCold && coldTrap ? coldTrap.speed : 0,
  );
}
