/** The pumping system of a plant, ready to be pumped down. */
import type { PumpingDesign, VacuumDesign } from '../design/designSchema.ts';
import type { Plant } from '../plant/plant.ts';
import { TRAP_CAPTURE } from './pumpKinds.ts';
import { pumpsOf, type Pump } from './pumps.ts';
import { OUTGASSING, powerLaw, type Outgassing, type OutgassingLaw } from './outgassing.ts';
import { meanSpeedOf, MOLAR_MASSES, WATER } from './species.ts';
import { tankSpace } from './tankSpace.ts';
import { USUAL_VENTING, type Venting } from './water.ts';

/** A surface that gives off gas. */
export interface GassySurface {
  readonly name: string;
  /** m² */
  readonly area: number;
  readonly law: OutgassingLaw;
  /** share of water after the usual venting */
  readonly water: number;
  readonly isBulk: boolean;
}

export interface ColdTrap {
  /** m³/s for water vapour */
  readonly speed: number;
  /** Pa: it takes water from this tank pressure down */
  readonly from: number;
}

/** Everything that a pump-down depends on, SI. */
export interface PumpSystem {
  /** m³ */
  readonly volume: number;
  /** K */
  readonly temperature: number;
  readonly pumps: readonly Pump[];
  readonly surfaces: readonly GassySurface[];
  /** Pa·m³/s of air */
  readonly leak: number;
  readonly venting: Venting;
  readonly coldTrap: ColdTrap | null;
  /** Pa */
  readonly crossover: number;
  readonly glow: PumpingDesign['glow'] | null;
  /** Pa wanted for the shot */
  readonly firingPressure: number;
}

function surfaceOf(surface: PumpingDesign['surfaces'][number], wallArea: number): GassySurface {
  const built: Outgassing = OUTGASSING[surface.material];
  return {
    name: surface.name ?? surface.material,
    area: surface.area ?? wallArea,
    law: surface.rate === undefined ? built.law : powerLaw(surface.rate, surface.exponent ?? 1),
    water: built.water,
    isBulk: built.isBulk,
  };
}

/** Room that a described system need not take from the geometry. */
export interface Room {
  /** m³ */
  readonly volume: number;
  /** m² */
  readonly wallArea: number;
}

/** A described pumping system in a room of its own. */
export function systemOf(
  design: PumpingDesign,
  { temperature, pressure }: Pick<VacuumDesign, 'temperature' | 'pressure'>,
  room: Room,
): PumpSystem {
  const { coldTrap, crossover } = design;
  const ceiling = meanSpeedOf(MOLAR_MASSES[WATER]!, temperature) / 4;
  return {
    volume: design.volume ?? room.volume,
    temperature,
    pumps: pumpsOf(design, temperature),
    surfaces: design.surfaces.map((surface) => surfaceOf(surface, design.wallArea ?? room.wallArea)),
    leak: design.leak,
    venting: design.venting ?? USUAL_VENTING,
    coldTrap: coldTrap
      ? {
          speed: coldTrap.waterSpeed ?? (coldTrap.area ?? 0) * ceiling * TRAP_CAPTURE,
          from: coldTrap.from ?? crossover,
        }
      : null,
    crossover,
    glow: design.glow ?? null,
    firingPressure: pressure,
  };
}

/** The pumping system of a plant; null if its design describes none. */
export function pumpSystem(plant: Plant): PumpSystem | null {
  const { system } = plant.vacuum;
  return system ? systemOf(system, plant.vacuum, tankSpace(plant)) : null;
}
