/** The trainer's sheet: aims, questions and answers of all lessons for one tank, as a document that prints alone. */
import { rightChoice, type AnyLesson, type PreparedLesson, type Question } from './lesson.ts';
import type { Say } from './say.ts';

/** A lesson worked out, or why it cannot be held in this tank. */
export type SheetPart =
  | { readonly lesson: AnyLesson; readonly prepared: PreparedLesson }
  | { readonly lesson: AnyLesson; readonly refusal: string };

const STYLE = `
  :root { color-scheme: light; }
  body { margin: 0; padding: 12px 20px 20px; background: #fff; color: #000; font: 13px/1.4 system-ui, 'Segoe UI', Roboto, 'Liberation Sans', sans-serif; }
  h1 { margin: 0 0 4px; font-size: 20px; }
  h2 { margin: 16px 0 4px; font-size: 15px; border-top: 1px solid #999; padding-top: 8px; }
  p, ol { margin: 4px 0; }
  li { margin: 1px 0; }
  li strong::after { content: ' ✓'; }
  section { break-inside: avoid; }
  .answer { padding-left: 20px; }
  .quiet { color: #333; font-size: 12px; }
  .blank { color: #333; }
`;

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as HTML: names come from design files. */
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPES[sign]!);

function questionHtml(heading: string, question: Question): string {
  const items = question.choices.map(({ text, isRight }) => {
    const html = escaped(text);
    return `<li>${isRight ? `<strong>${html}</strong>` : html}</li>`;
  });
  return `<p><b>${heading}</b> ${escaped(question.text)}</p>
    <ol type="a">${items.join('')}</ol>
    <p class="answer">${escaped(rightChoice(question).feedback)}</p>`;
}

function partHtml(part: SheetPart, number: number, say: Say): string {
  const { title, aim, doing, cautions } = part.lesson;
  const head = `<h2>${number}. ${escaped(title)}</h2><p><b>Aim.</b> ${escaped(aim)}</p>`;
  if ('refusal' in part)
    return `<section>${head}<p class="blank">Cannot be held in this tank: ${escaped(part.refusal)}</p></section>`;
  const { prepared } = part;
  const warnings = cautions
    ? `<p><b>${escaped(cautions.title)}.</b> ${cautions.cautions.map(escaped).join(' ')} Local codes and licensed practice come first.</p>`
    : '';
  return `<section>${head}${questionHtml('Predict.', prepared.predict(say))}
    <p><b>Do.</b> ${escaped(doing)}</p>
    ${prepared
      .explain(say)
      .map((text) => `<p>${escaped(text)}</p>`)
      .join('')}
    ${questionHtml('Check.', prepared.check(say))}${warnings}</section>`;
}

/** @param dateLine as the reader writes it */
export function trainerSheet(parts: readonly SheetPart[], tankName: string, dateLine: string, say: Say): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Trainer’s sheet</title><style>${STYLE}</style></head><body>
    <h1>Trainer’s sheet</h1>
    <p>${escaped(tankName)} · ${escaped(dateLine)}</p>
    <p class="quiet">All numbers are worked out for this tank; another tank has other answers. The right answers bear a check mark.</p>
    ${parts.map((part, i) => partHtml(part, i + 1, say)).join('\n')}
  </body></html>`;
}
