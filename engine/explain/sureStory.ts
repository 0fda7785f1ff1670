/** How sure an explanation is: numerical errors, assumptions with their weight, what was left out. */
import { decompose } from './decompose.ts';
import type { Coat } from '../coat/coat.ts';
import type { Plant } from '../plant/plant.ts';
import type { Findings, Statement } from './story.ts';
import { filaments, limit, share, thick } from './words.ts';

/** By how much a film's density is commonly below that of bulk metal (common practice, no source). */
const POROSITY = 0.05;
/** Differences between two laws of emission below this are none. */
const SAME = 0.01;

const nanometres = (metres: number): string => {
  const value = metres * 1e9;
  return value < 0.01 ? 'less than 0.01 nm' : `${Number(value.toPrecision(1))} nm`;
};

function numberStatement({ statistics: { mean, minimum, uniformity }, face }: Coat): Statement {
  return {
    topic: 'Numbers',
    claim: `The arithmetic is sure to ${nanometres(mean.error)} in the average and ${nanometres(minimum.error)} at the thinnest place, on ${face.points.count} points; the model below is the larger doubt.`,
    figures: { mean: mean.error, thinnest: minimum.error, uniformity: uniformity.error, points: face.points.count },
    tone: 'good',
  };
}

/** The plant as if every filament sent its vapour evenly in all directions. */
function sendingEvenly(plant: Plant): Plant {
  const filaments = plant.filaments.map((filament) => ({
    ...filament,
    source: { ...filament.source, law: { kind: 'isotropic' } as const },
  }));
  return { ...plant, filaments };
}

/** What the assumed law of emission is worth: the same comparison with the other extreme. */
function emissionStatement({ coat: { plant }, scene, found, decomposition, gas }: Findings): Statement[] {
  if (!decomposition || plant.filaments.every(({ source }) => source.law.kind === 'isotropic')) return [];
  const { from, difference } = decomposition;
  const even = decompose(sendingEvenly(plant), scene, found.from.points, found.to.points, gas.inCoat);
  const [assumed, other] = [difference / from.deposit, even.difference / even.from.deposit];
  const word = (value: number): string => `${share(value)} ${value < 0 ? 'less' : 'more'}`;
  const isSame = Math.abs(other - assumed) < SAME;
  const claim = isSame
    ? `Even if filaments sent vapour evenly in all directions, the coat ${found.to.where} would get ${word(other)} than ${found.from.where}.`
    : `If filaments sent vapour evenly in all directions, the coat ${found.to.where} would get ${word(other)} than ${found.from.where}, not ${word(assumed)}: witness slides, small glass plates beside the mirror, can tell.`;
  return [
    {
      topic: 'Direction of departure',
      claim,
      figures: { assumed, ifEven: other },
      tone: Math.abs(other - assumed) < plant.film.tolerance / 2 ? 'plain' : 'watch',
    },
  ];
}

function filmStatement({ plant: { film }, statistics: { mean } }: Coat): Statement {
  return {
    topic: 'Film',
    claim: `All vapour that arrives is taken to stick to ${limit(film.sticking)}, as metal of ${film.density} kg/m³; a film ${limit(POROSITY)} less dense would be ${thick(mean.value / (1 - POROSITY))} thick on average, no less even.`,
    figures: { sticking: film.sticking, density: film.density, ifPorous: mean.value / (1 - POROSITY) },
    tone: 'plain',
  };
}

function leftOutStatement({ coat: { plant }, gas: { inCoat } }: Findings): Statement {
  const all = plant.filaments.length;
  const gas = inCoat === Infinity ? 'collisions with gas, ' : '';
  return {
    topic: 'Left out',
    claim: `Vapour is taken to fly straight, and ${all === 1 ? 'the 1 filament' : `all ${filaments(all)}`} to empty wholly; left out are ${gas}sagging wire, spatter and vapour that walls give back.`,
    figures: { filaments: all },
    tone: 'plain',
  };
}

/** How sure it all is. */
export function sureStatements(findings: Findings): Statement[] {
  return [
    numberStatement(findings.coat),
    ...emissionStatement(findings),
    ...(findings.decomposition ? [filmStatement(findings.coat)] : []),
    leftOutStatement(findings),
  ];
}
