/** What a coat costs: thickness, light, sharpness. */
import { anyLength } from '../film/words.ts';
import type { Consequence } from './consequence.ts';
import type { Findings, Statement } from './story.ts';
import { limit, share, thick } from './words.ts';

/** The mean counts as on target within this share of it. */
const ON_TARGET = 0.005;
/** Sharpness of the best image that still counts as untouched, and as diffraction-limited (Maréchal). */
const UNTOUCHED = 0.99;
const DIFFRACTION_LIMITED = 0.8;
/** Loss of light below which no photometer can tell. */
const UNSEEN_LOSS = 1e-3;

/** A share that may be tiny, "0.23 %", "0.002 %". */
const fine = (value: number): string => {
  const percent = Math.abs(100 * value);
  if (percent < 1e-3) return 'less than 0.001 %';
  return `${percent >= 9.95 ? percent.toFixed(0) : Number(percent.toPrecision(2))} %`;
};

function thicknessStatement({ coat }: Findings): Statement {
  const { mean, minimum } = coat.statistics;
  const { target } = coat.plant.film;
  const off = mean.value / target - 1;
  const average =
    Math.abs(off) < ON_TARGET
      ? `The average is the ${thick(target)} that was ordered`
      : `The average is ${thick(mean.value)}, ${share(off)} ${off < 0 ? 'under' : 'over'} the ${thick(target)} that was ordered`;
  return {
    topic: 'Thick enough?',
    claim: `${average}; the thinnest place has ${thick(minimum.value)}.`,
    figures: { mean: mean.value, target, thinnest: minimum.value },
    tone: off < -coat.plant.film.tolerance ? 'bad' : 'plain',
  };
}

function toleranceStatement({ coat }: Findings): Statement {
  const { fractionInside, uniformity } = coat.statistics;
  const { tolerance } = coat.plant.film;
  const outside = 1 - fractionInside.value;
  const isInside = outside < 5e-4;
  return {
    topic: isInside ? 'Inside the limits' : 'Outside the limits',
    claim: isInside
      ? `Every place is within ±${limit(tolerance)} of the average; from thinnest to thickest it spans ±${share(uniformity.value)}.`
      : `${share(outside)} of the mirror is more than ${limit(tolerance)} off the average; from thinnest to thickest it spans ±${share(uniformity.value)}.`,
    figures: { outside, uniformity: uniformity.value, tolerance },
    tone: isInside ? 'good' : 'bad',
  };
}

function lampStatement({ coat }: Findings, { opaqueFrom }: Consequence): Statement {
  const { value } = coat.statistics.minimum;
  const isOpaque = value >= opaqueFrom;
  return {
    topic: isOpaque ? 'No lamp shows through' : 'A lamp shows through',
    claim: isOpaque
      ? `In a lit room no lamp shows through from ${thick(opaqueFrom)} on; the thinnest place has ${thick(value - opaqueFrom)} to spare.`
      : `In a lit room a lamp shows through below ${thick(opaqueFrom)}; the thinnest place lacks ${thick(opaqueFrom - value)}.`,
    figures: { opaqueFrom, thinnest: value },
    tone: isOpaque ? 'good' : 'bad',
  };
}

function lightStatement({ coat }: Findings, film: Consequence): Statement {
  const thin = 1 - film.reflectance.value / film.thickCoat;
  const smaller = 2 * coat.plant.shape.clearOuterRadius * (1 - Math.sqrt(1 - thin));
  const cost =
    thin < UNSEEN_LOSS
      ? `the thin places cost ${fine(thin)} of the light, which nobody will see`
      : `the thin places cost ${fine(thin)} of the light, as if the mirror were ${anyLength(smaller)} smaller across`;
  return {
    topic: 'Light',
    claim: `The mirror reflects ${(100 * film.reflectance.value).toFixed(1)} % of the light (${film.light}): ${cost}.`,
    figures: { reflectance: film.reflectance.value, lostByThickness: thin, atThinnest: film.reflectedAtThinnest },
    tone: thin < UNSEEN_LOSS ? 'good' : thin < 0.01 ? 'watch' : 'bad',
  };
}

/** "0.23 % longer", or "26 times as long". */
const longer = (more: number): string =>
  more < 1 ? `${fine(more)} longer` : `${(1 + more).toPrecision(2)} times as long`;

function perfectStatement(film: Consequence): Statement {
  const { lightLost, mirrors, exposureLonger, perfect, lostAgainstLastYear } = film;
  const path = mirrors === 1 ? 'this mirror' : `${mirrors} mirrors coated alike`;
  const lastYear =
    lostAgainstLastYear === null
      ? ''
      : ` Against last year's coat it is ${fine(lostAgainstLastYear)} ${lostAgainstLastYear > 0 ? 'less' : 'more'}.`;
  return {
    topic: 'Against a perfect coat',
    claim: `Oxide, roughness and thin places together leave ${fine(lightLost)} less light after ${path} than a perfect fresh coat (${(100 * perfect).toFixed(1)} %): exposures take ${longer(exposureLonger)}.${lastYear}`,
    figures: { lightLost, exposureLonger, ...(lostAgainstLastYear !== null && { lostAgainstLastYear }) },
    tone: 'plain',
  };
}

/** "1/212 of a wave"; tiny shares without their digits. */
const ofAWave = (part: number): string =>
  part < 1e-4
    ? 'less than 1/10000 of a wave'
    : part > 0.1
      ? `${part.toFixed(2)} of a wave`
      : `1/${(1 / part).toFixed(0)} of a wave`;

function figureStatement({ bump, remains, wavelength, sharpness }: Consequence): Statement {
  const verdict =
    sharpness >= UNTOUCHED
      ? 'no image will show it'
      : sharpness >= DIFFRACTION_LIMITED
        ? `the sharpest image keeps ${share(sharpness)} of its peak`
        : `the sharpest image keeps only ${share(sharpness)} of its peak`;
  return {
    topic: 'Sharpness',
    claim: `An uneven coat is a bump on the mirror: it bends the light wave by ${thick(bump)} from low to high. Refocusing leaves ${thick(remains)} on average, ${ofAWave(remains / wavelength)}: ${verdict}.`,
    figures: { bump, remains, wavelength, sharpness },
    tone: sharpness >= UNTOUCHED ? 'good' : sharpness >= DIFFRACTION_LIMITED ? 'watch' : 'bad',
  };
}

/** What the coat costs, in the order in which a manager asks. */
export function costStatements(findings: Findings): Statement[] {
  const { consequence } = findings;
  const isBare = !(findings.coat.statistics.mean.value > 0);
  const first = [thicknessStatement(findings), ...(isBare ? [] : [toleranceStatement(findings)])];
  if ('problem' in consequence)
    return [
      ...first,
      {
        topic: 'Light',
        claim: `Reflectance could not be worked out: ${consequence.problem}.`,
        figures: { wavelength: findings.coat.plant.film.wavelength },
        tone: 'watch',
      },
    ];
  return [
    ...first,
    lampStatement(findings, consequence),
    lightStatement(findings, consequence),
    perfectStatement(consequence),
    ...(isBare ? [] : [figureStatement(consequence)]),
  ];
}
