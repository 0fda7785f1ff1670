/** Why a place is as it is: the factors, the filaments, what failed. */
import { emittedIntensity } from '../emission/emissionLaw.ts';
import type { FilamentSource } from '../emission/filamentSource.ts';
import { anyLength } from '../film/words.ts';
import { isEven, type Place } from './coatCase.ts';
import { readPlace, type Reading } from './reading.ts';
import type { Decomposition, FactorShare } from './decompose.ts';
import type { Factor } from './factors.ts';
import { BY_GLASS, BY_SHIELD } from './sight.ts';
import { thicknessOf, type Findings, type Statement, type Tone } from './story.ts';
import { count, degrees, effect, filaments, lengthFor, listed, mass, share, signed, started, thick } from './words.ts';

/** Names of the factors in sentences and charts. */
export const FACTOR_NAMES: Readonly<Record<Factor, string>> = {
  distance: 'distance',
  emission: 'direction of departure',
  arrival: 'slant of arrival',
  shadow: 'shadow',
  gas: 'gas in the tank',
};

/** Factors that change less than this of the coat are left to the chart. */
const WORTH_TELLING = 0.005;
/** Shares of vapour that meets gas which may be left out, and beyond which a straight-line map is in doubt. */
const HARMLESS = 0.02;
const DOUBTFUL = 0.1;
/** Filament sets that are told apart in a sentence; more would be a table. */
const MOST_SETS = 3;

/** Factors by what they change, largest first. */
export function rankedFactors({ factors }: Decomposition): FactorShare[] {
  return factors.toSorted((p, q) => Math.abs(q.share) - Math.abs(p.share));
}

/** What blocks, by name. */
export function blockerName({ coat }: Findings, blocker: number): string {
  if (blocker === BY_SHIELD) return 'the shields of the filaments';
  if (blocker === BY_GLASS) return 'the mirror itself';
  return `“${coat.plant.obstacleNames[blocker] ?? ''}”`;
}

/** How unevenly a law sends its vapour, in words; null if it sends it evenly. */
function lawInWords({ law }: FilamentSource): string | null {
  if (law.kind === 'isotropic') return null;
  const samples = Array.from({ length: 181 }, (_, i) => emittedIntensity(law, Math.cos((i * Math.PI) / 180)));
  const most = Math.max(...samples);
  const along = samples[0]!;
  const across = samples[90]!;
  if (law.kind === 'wire') return 'A straight wire sends most of its vapour sideways and none along itself';
  if (law.kind === 'coil')
    return `An open coil sends ${(along / across).toFixed(1)} times as much along its own line as across it`;
  if (law.kind === 'cosine')
    return `These sources send most straight ahead and ${share(emittedIntensity(law, Math.SQRT1_2) / most)} of that at 45°`;
  return `These sources send most at ${samples.indexOf(most)}° from their axis`;
}

type Explained = { readonly claim: string; readonly figures: Readonly<Record<string, number>> };

/** What a factor means, with the numbers that show it at both places. */
function meaning(findings: Findings, { from, to }: Decomposition, { factor, share: part }: FactorShare): Explained {
  const { found, coat } = findings;
  const length = lengthFor(coat.plant.shape);
  const places = [
    { reading: to, where: found.to.where },
    { reading: from, where: found.from.where },
  ].filter(({ reading }) => reading.deposit > 0); // where nothing arrives there is nothing to tell of
  const compare = (read: (reading: Reading) => string, noun = ''): string =>
    places.map(({ reading, where }, i) => `${read(reading)}${i === 0 ? noun : ''} ${where}`).join(', ');
  // a mean may point the other way where filaments differ much: then only the sum over filaments tells
  const summed = `filament by filament that ${effect(part)} of the coat ${found.from.where}`;
  const told = (more: number, less: number, clause: string): string =>
    part < 0 === more > less || Number.isNaN(more - less) ? clause : summed;
  switch (factor) {
    case 'distance': {
      const ways = compare(({ meanDistance }) => length(meanDistance), ' on average');
      return {
        claim: `Twice as far leaves a quarter of the vapour: ${told(to.meanDistance, from.meanDistance, `it flies ${ways}`)}.`,
        figures: { way: to.meanDistance, wayFrom: from.meanDistance },
      };
    }
    case 'arrival': {
      const angles = compare(({ meanArrival }) => degrees(meanArrival), ' off the perpendicular');
      return {
        claim: `Vapour that comes in at a slant is spread over more glass: ${told(to.meanArrival, from.meanArrival, `it comes in ${angles}`)}.`,
        figures: { angle: to.meanArrival, angleFrom: from.meanArrival },
      };
    }
    case 'emission': {
      const laws = coat.plant.filaments.map(({ source }) => lawInWords(source)).filter((text) => text !== null);
      const parts = `of what an even source would send, ${compare(({ favour }) => share(favour), ' arrives')}`;
      return {
        claim: `${laws[0] ?? 'Some sources favour directions'}: ${told(from.favour, to.favour, parts)}.`,
        figures: { favour: to.favour, favourFrom: from.favour },
      };
    }
    case 'shadow': {
      const [reading, place] = part < 0 ? [to, found.to] : [from, found.from];
      const bound = reading.deposit + reading.blocked.reduce((sum, { deposit }) => sum + deposit, 0);
      const worst = reading.blocked.slice(0, 2).map((blocked) => ({ ...blocked, part: blocked.deposit / bound }));
      const names = worst.map(({ blocker, part: lost }) => `${blockerName(findings, blocker)} stops ${share(lost)}`);
      return {
        claim: `Of the vapour bound for the coat ${place.where}, ${listed(names)}.`,
        figures: Object.fromEntries(worst.map(({ part: lost }, i) => [`blocked${i + 1}`, lost])),
      };
    }
    case 'gas':
      return {
        claim: `Collisions with gas turn vapour aside: it flies ${anyLength(findings.gas.inCoat)} on average before one.`,
        figures: { freePath: findings.gas.inCoat },
      };
  }
}

function factorStatement(findings: Findings, decomposition: Decomposition, part: FactorShare): Statement {
  const { claim, figures } = meaning(findings, decomposition, part);
  return {
    topic: `${started(FACTOR_NAMES[part.factor])} ${effect(part.share)}`,
    claim,
    figures: { share: part.share, alone: part.alone, ...figures },
    tone: isEven(findings.found.kind) ? 'plain' : part.share < 0 ? 'bad' : 'good',
  };
}

function filamentStatement({ coat, found }: Findings, { from, to }: Decomposition): Statement {
  const all = coat.plant.filaments.length;
  const lives = ({ seenFilaments, effectiveFilaments }: Reading): string =>
    `sees ${count(seenFilaments)} of ${all} filaments, and about ${count(effectiveFilaments)} do the work`;
  return {
    topic: 'Filaments that count',
    claim:
      all === 1
        ? `There is one filament, ${lengthFor(coat.plant.shape)(to.nearest)} away ${found.to.where}, ${lengthFor(coat.plant.shape)(from.nearest)} ${found.from.where}.`
        : `The coat ${found.to.where} ${lives(to)}; ${found.from.where} it ${lives(from)}.`,
    figures: {
      seen: to.seenFilaments,
      seenFrom: from.seenFilaments,
      effective: to.effectiveFilaments,
      effectiveFrom: from.effectiveFilaments,
      nearest: to.nearest,
      nearestFrom: from.nearest,
    },
    tone: 'plain',
  };
}

function setStatements({ coat, found }: Findings, { from, to }: Decomposition): Statement[] {
  const { setNames } = coat.plant;
  if (setNames.length < 2) return [];
  const order = setNames
    .map((name, i) => ({ name, to: to.bySet[i]!, from: from.bySet[i]! }))
    .toSorted((p, q) => Math.abs(q.to - q.from) - Math.abs(p.to - p.from))
    .slice(0, MOST_SETS);
  const parts = order.map((set, i) => {
    const [here, there] = [thick(thicknessOf(coat, set.to)), thick(thicknessOf(coat, set.from))];
    return i === 0
      ? `“${set.name}” lays ${here} ${found.to.where} and ${there} ${found.from.where}`
      : `“${set.name}” ${here} and ${there}`;
  });
  return [
    {
      topic: 'By set of filaments',
      claim: `${parts.join('; ')}.`,
      figures: Object.fromEntries(order.map((set) => [set.name, set.to - set.from])),
      tone: 'plain',
    },
  ];
}

/** What filaments that are out of use would lay at the place in question. */
export function idleStatements({ coat, scene, found }: Pick<Findings, 'coat' | 'scene' | 'found'>): Statement[] {
  const { plant } = coat;
  const idle = plant.filaments.filter(({ outOfUse, charge }) => outOfUse || charge === 0);
  if (idle.length === 0) return [];
  const revived = idle.filter(({ charge }) => charge > 0).map((filament) => ({ ...filament, outOfUse: false }));
  const deposit = readPlace({ ...plant, filaments: revived }, scene, found.to.points).deposit;
  const added = thicknessOf(coat, deposit);
  const hung = revived.reduce((sum, { charge }) => sum + charge, 0);
  const many = `${idle.length} of ${filaments(plant.filaments.length)} ${idle.length === 1 ? 'gives' : 'give'} nothing`;
  const wouldAdd =
    revived.length > 0
      ? `; with ${mass(hung)} more in all, ${revived.length === 1 ? 'it' : 'they'} would add ${thick(added)} ${found.to.where}`
      : '';
  return [
    {
      topic: 'Filaments out of use',
      claim: `${many}${wouldAdd}.`,
      figures: { idle: idle.length, added, hung },
      tone: 'bad',
    },
  ];
}

/** Share of vapour that meets gas on its straight way, and what it would do to the comparison if none of that arrived. */
function gasStatements({ coat, scene, found, gas, decomposition }: Findings): Statement[] {
  const { freePath, inCoat } = gas;
  if (freePath === Infinity || !decomposition) return [];
  if (decomposition.from.deposit === 0 || decomposition.to.deposit === 0) return []; // no way to speak of
  const kept = (place: Place): number =>
    readPlace(coat.plant, scene, place.points, freePath).deposit / readPlace(coat.plant, scene, place.points).deposit;
  const [here, there] = [kept(found.to), kept(found.from)];
  const most = 1 - Math.min(here, there);
  const tone: Tone = most < HARMLESS ? 'good' : most < DOUBTFUL ? 'watch' : 'bad';
  const change = signed(here / there - 1);
  const consequence =
    inCoat === Infinity
      ? `left out here, losing all of it would change their ratio by ${change}`
      : `that changes their ratio by ${change}`;
  return [
    {
      topic: 'Gas',
      claim: `Of the vapour bound for the coat ${found.to.where}, ${share(1 - here)} meets gas on its way, ${share(1 - there)} ${found.from.where} (an atom flies ${anyLength(freePath)} on average before it does); ${consequence}.`,
      figures: { freePath, meeting: 1 - here, meetingFrom: 1 - there, ratio: here / there },
      tone,
    },
  ];
}

/** The reasons, most important first. */
export function whyStatements(findings: Findings): Statement[] {
  const { decomposition } = findings;
  if (!decomposition) return idleStatements(findings);
  return [
    ...idleStatements(findings),
    ...rankedFactors(decomposition)
      .filter((part) => Math.abs(part.share) >= WORTH_TELLING)
      .map((part) => factorStatement(findings, decomposition, part)),
    filamentStatement(findings, decomposition),
    ...setStatements(findings, decomposition),
    ...gasStatements(findings),
  ];
}
