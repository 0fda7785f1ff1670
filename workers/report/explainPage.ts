/** The one-page explanation as a self-contained HTML document: no scripts, no addresses, prints on one sheet. */
import type { Explanation } from '../../engine/explain/explainCoat.ts';
import type { OptionEffect } from '../../engine/explain/optionStory.ts';
import type { Statement } from '../../engine/explain/story.ts';
import { limit, mass, share, thick } from '../../engine/explain/words.ts';
import { isEven } from '../../engine/explain/coatCase.ts';
import type { DesignFile } from '../../engine/index.ts';
import { escaped } from '../picture/svgText.ts';
import { factorBars } from './factorBars.ts';
import { PAGE_STYLE } from './pageStyle.ts';
import { profilePicture } from './profilePicture.ts';
import { sideView, type Facing } from './sideView.ts';
import { smallMap } from './smallMap.ts';

/** How a design's mirror hangs. */
export function facingOf({ mirror }: DesignFile): Facing {
  const { facing = 'down' } = mirror;
  return typeof facing === 'string' ? facing : 'sideways';
}

export interface PageOptions {
  /** how the mirror hangs in the tank; down unless given, as in a design */
  readonly facing?: Facing;
  /** a date or another note of the reader's own, beside the name */
  readonly dateLine?: string;
}

/** Statements of each part that one sheet has room for. */
const MOST_REASONS = 6;
const MOST_OPTIONS = 4;
/** Letters of a name in the table. */
const MOST_LETTERS = 44;
/** Letters of running text beyond which the sheet is set smaller. */
const DENSE = 2900;
/** What a line of the table takes, in letters. */
const LETTERS_PER_ROW = 60;
/** What bars and profile take of the right column, in letters. */
const LETTERS_FOR_PICTURES = 1150;
const CAUTION =
  'Work in a vacuum tank and on its heavy currents can kill: lock out supplies, treat the tank as a confined space, keep to local codes and licensed people.';
const WORDS =
  'A nanometre (nm) is a millionth of a millimetre. A filament is a hot wire from which aluminium evaporates. Shares are summed filament by filament, as means over all orders of the causes (Shapley 1953): they add up exactly.';

/** Words of the page: escaped, and no number parted from its unit. */
const words = (text: string): string =>
  escaped(text).replace(/(\d) (?=(?:nm|mm|m|µm|g|mg|%|kg\/m³)(?![a-z]))/g, '$1\u00a0');

function list(statements: readonly Statement[], kind: string): string {
  const items = statements.map(({ topic, claim, tone }) => {
    const head = /[?!.]$/.test(topic) ? topic : `${topic}.`;
    return `<li class="${tone}"><b>${words(head)}</b> ${words(claim)}</li>`;
  });
  return `<ul class="${kind}">${items.join('')}</ul>`;
}

function section(kind: string, title: string, body: string): string {
  return `<section class="${kind}"><h2>${words(title)}</h2>${body}</section>`;
}

const figure = (kind: string, svg: string): string => `<figure class="${kind}">${svg}</figure>`;

function keyFigures({ coat }: Explanation): string {
  const { mean, minimum, uniformity, fractionInside } = coat.statistics;
  const { target, tolerance } = coat.plant.film;
  const entry = (name: string, value: string, note: string): string =>
    `<div><dt>${words(name)}</dt><dd>${words(value)} <small>${words(note)}</small></dd></div>`;
  const under = mean.value > 0 ? `${share(1 - minimum.value / mean.value)} below average` : 'bare';
  return `<dl class="keys">${[
    entry('Average thickness', thick(mean.value), `ordered ${thick(target)}`),
    entry('Thinnest place', thick(minimum.value), under),
    entry('Spread, thin to thick', mean.value > 0 ? `±${share(uniformity.value)}` : '–', `limit ±${limit(tolerance)}`),
    entry('Area within limit', share(fractionInside.value), `±${limit(tolerance)} of average`),
  ].join('')}</dl>`;
}

const shortened = (name: string): string =>
  name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1).trimEnd()}…` : name;

function optionRow({ name, thinnest, uniformity, reflectance, evaporated }: OptionEffect, i: number): string {
  const cells = [
    thick(thinnest),
    `±${share(uniformity)}`,
    reflectance === null ? '–' : `${(100 * reflectance).toFixed(1)} %`,
    mass(evaporated),
  ].map((text) => `<td>${words(text)}</td>`);
  return `<tr><th scope="row">${words(i === 0 ? 'this coat' : shortened(name))}</th>${cells.join('')}</tr>`;
}

function optionTable(effects: readonly OptionEffect[]): string {
  if (effects.length < 2) return '';
  const [base, ...others] = effects;
  const best = others.toSorted((p, q) => p.uniformity - q.uniformity).slice(0, MOST_OPTIONS);
  const left = others.length - best.length;
  const heads = ['Layout', 'Thinnest', 'Spread', 'Reflects', 'Aluminium'].map((text) => `<th scope="col">${text}</th>`);
  return [
    `<div class="scroll"><table><thead><tr>${heads.join('')}</tr></thead>`,
    `<tbody>${[base!, ...best].map(optionRow).join('')}</tbody></table></div>`,
    left > 0 ? `<p class="note">${left} more compared, not shown.</p>` : '',
  ].join('');
}

/** The option that makes the coat most even, and what has no rival: other charges on the same layout. */
function tellingOptions(options: readonly Statement[]): Statement[] {
  const spread = ({ figures }: Statement): number => figures['uniformity'] ?? Infinity;
  const layouts = options.filter(({ figures }) => 'uniformity' in figures);
  const best = layouts.toSorted((p, q) => spread(p) - spread(q)).slice(0, 1);
  return [...best, ...options.filter((option) => !layouts.includes(option))];
}

function optionsPart({ effects, options }: Explanation): string {
  const sentences = tellingOptions(options);
  const body =
    options.length > 0
      ? optionTable(effects) + list(sentences, 'options')
      : `<p>No other layout was compared; the thinnest place has ${words(thick(effects[0]?.thinnest ?? 0))} as it is.</p>`;
  return section('options', 'What could be done', `${body}<p class="note">${CAUTION}</p>`);
}

function whyTitle({ found, decomposition }: Explanation): string {
  if (!decomposition) return 'Why';
  if (isEven(found.kind)) return `Why it comes out even: ${found.to.label} against ${found.from.label}`;
  return `Why: ${found.to.label} against ${found.from.label}`;
}

const lettersIn = (statements: readonly Statement[]): number =>
  statements.reduce((sum, { topic, claim }) => sum + topic.length + claim.length, 0);

/** The page. What tells of doubts goes where there is room: the shorter column, or below both. */
export function explainPage(explanation: Explanation, { facing = 'down', dateLine }: PageOptions = {}): string {
  const { coat, question, answer, decomposition, why, cost, sure, options, effects } = explanation;
  const { name } = coat.plant;
  const reasons = why.filter(({ claim }) => !answer.includes(claim)).slice(0, MOST_REASONS);
  const told = tellingOptions(options);
  const rows = LETTERS_PER_ROW * Math.min(MOST_OPTIONS + 1, effects.length);
  const [left, right, last] = [lettersIn([...reasons, ...cost]), lettersIn(told) + rows, lettersIn(sure)];
  const isDense = left + right + last + answer.length > DENSE;
  const room = left - (right + LETTERS_FOR_PICTURES);
  const spot = room > last / 2 ? 'right' : room < -last / 2 ? 'left' : 'below';
  const doubts = section(spot === 'below' ? 'sure wide' : 'sure', 'How sure are we?', list(sure, ''));
  const date = dateLine === undefined ? '' : `<span>${words(dateLine)}</span>`;
  const parts = [
    `<header><p><span>${words(name)}</span>${date}</p><h1>${words(question)}</h1><p class="answer">${words(answer)}</p></header>`,
    keyFigures(explanation),
    '<div class="columns"><div class="column">',
    figure('side', sideView(explanation, facing)),
    section('why', whyTitle(explanation), list(reasons, 'causes')),
    section('cost', 'What it costs', list(cost, '')),
    spot === 'left' ? doubts : '',
    '</div><div class="column">',
    figure('map', smallMap(coat)),
    decomposition ? figure('bars', factorBars(decomposition, explanation.hasGas)) : '',
    figure('profile', profilePicture(explanation)),
    optionsPart(explanation),
    spot === 'right' ? doubts : '',
    '</div></div>',
    spot === 'below' ? doubts : '',
    `<footer>${WORDS} Evenfall advises; it controls nothing.</footer>`,
  ];
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(`${question} ${name}`)}</title>`,
    `<style>${PAGE_STYLE}</style>`,
    '</head>',
    `<body><main${isDense ? ' class="dense"' : ''}>`,
    ...parts,
    '</main></body>',
    '</html>',
    '',
  ].join('\n');
}
