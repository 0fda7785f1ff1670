/** The style sheet of the explanation: a sheet of paper on the screen, one page in print. */

/** Colours by theme; the bars that take and add differ by direction, sign and hatch too. */
const LIGHT = `
  --paper: #ffffff; --ground: #e9ecee; --ink: #1b2127; --quiet: #535f6a; --line: #c9d0d6;
  --fill: #eef1f3; --glass: #b9c6cf; --solid: #8b939a; --accent: #1f5f8b; --takes: #a2471c; --adds: #2b6c8f;
  --good: #1f6140; --watch: #7a4a16; --bad: #97301a; --band: #dbe7ef;`;
const DARK = `
  --paper: #1b2024; --ground: #121518; --ink: #e8ebed; --quiet: #a3aeb7; --line: #3d464d;
  --fill: #242b30; --glass: #5c6a74; --solid: #7d868d; --accent: #8fc1e3; --takes: #e0976b; --adds: #7fb6d6;
  --good: #8fcfa9; --watch: #e3b982; --bad: #efa08a; --band: #263742;`;

export const PAGE_STYLE = `
:root { color-scheme: light; ${LIGHT} }
@media screen and (prefers-color-scheme: dark) { :root { color-scheme: dark; ${DARK} } }
* { box-sizing: border-box; }
body, h1, h2, p, ul, dl, dd, figure, table { margin: 0; padding: 0; }
body { background: var(--ground); color: var(--ink); font: 15px/1.42 system-ui, 'Segoe UI', Roboto, 'Liberation Sans', sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: break-word; }
main { background: var(--paper); max-width: 940px; margin: 24px auto; padding: 28px 36px 24px; border-radius: 4px; box-shadow: 0 1px 3px rgb(0 0 0 / 0.18); }
header p:first-child { color: var(--quiet); display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 16px; }
h1 { font-size: 30px; line-height: 1.15; margin: 2px 0 6px; font-weight: 650; text-wrap: balance; }
.answer { font-size: 18px; line-height: 1.38; }
h2 { font-size: 17px; line-height: 1.25; margin-bottom: 6px; padding-top: 8px; border-top: 2px solid var(--ink); }
.keys { display: grid; grid-template-columns: repeat(4, 1fr); gap: 12px; margin: 14px 0 16px; padding: 0; }
.keys div { border-left: 3px solid var(--line); padding-left: 10px; }
.keys dt { color: var(--quiet); font-size: 13px; }
.keys dd { font-weight: 650; font-size: 19px; line-height: 1.2; }
.keys dd small { font-weight: 400; font-size: 12px; color: var(--quiet); display: block; }
.columns { display: grid; grid-template-columns: 1fr 1fr; gap: 0 32px; align-items: start; }
.column { display: flex; flex-direction: column; gap: 14px; min-width: 0; }
.sure.wide { margin-top: 14px; }
.columns, .sure.wide { margin-bottom: 10px; }
.sure.wide ul { columns: 2; column-gap: 32px; }
.sure li { break-inside: avoid; }
svg { display: block; width: 100%; height: auto; max-width: 520px; margin: 0 auto; }
ul { list-style: none; }
li { margin: 0 0 7px; padding-left: 19px; position: relative; }
li::before { position: absolute; left: 0; top: 0; font-weight: 700; content: '\\2022'; color: var(--quiet); width: 14px; text-align: center; }
li.good::before { content: '\\2713'; color: var(--good); }
li.watch::before { content: '!'; color: var(--watch); }
li.bad::before { content: '\\2717'; color: var(--bad); }
.causes li::before { content: '\\2022'; color: var(--quiet); }
li b { font-weight: 650; }
td { white-space: nowrap; }
table { width: 100%; border-collapse: collapse; margin-bottom: 9px; font-size: 14px; }
th, td { text-align: right; padding: 3px 0 3px 8px; border-bottom: 1px solid var(--line); vertical-align: top; font-weight: 400; }
th:first-child, td:first-child { text-align: left; padding-left: 0; }
thead th { color: var(--quiet); font-size: 13px; line-height: 1.2; vertical-align: bottom; }
tbody th { font-weight: 400; }
tbody tr:first-child th { font-weight: 650; }
.note, footer { color: var(--quiet); font-size: 13px; line-height: 1.35; }
footer { border-top: 1px solid var(--line); padding-top: 7px; }
svg text { font: 12.5px system-ui, 'Segoe UI', Roboto, 'Liberation Sans', sans-serif; fill: var(--ink); }
svg text.quiet { fill: var(--quiet); }
svg text.strong { font-weight: 650; }
svg text.small { font-size: 11px; }
svg text.halo { paint-order: stroke; stroke: var(--paper); stroke-width: 3.2px; stroke-linejoin: round; }
path { fill: none; }
.tank { fill: var(--fill); stroke: var(--quiet); stroke-width: 1.5px; }
.glass { fill: var(--glass); stroke: var(--ink); }
.solid { fill: var(--solid); stroke: var(--ink); stroke-width: 0.6px; fill-opacity: 0.75; }
.filament { stroke: var(--ink); stroke-width: 2.4px; stroke-linecap: round; }
.filament-end { fill: var(--ink); }
.idle { stroke: var(--takes); stroke-width: 1.6px; }
.sight { stroke: var(--accent); stroke-width: 1.8px; }
.broken { stroke-dasharray: 5 4; }
.spot { fill: var(--accent); stroke: var(--paper); stroke-width: 1.2px; }
.sign { fill: var(--ink); stroke: var(--paper); stroke-width: 1.2px; }
.witness { fill: var(--paper); stroke: var(--ink); }
.axis { stroke: var(--ink); }
.dotted { stroke-dasharray: 1.5 4; }
.grid { stroke: var(--line); stroke-width: 0.7px; }
.zero { stroke: var(--quiet); }
.rule { stroke: var(--line); }
.bar.takes { fill: var(--takes); }
.bar.adds { fill: var(--paper); stroke: var(--adds); stroke-width: 2px; }
.bar.sum { fill: var(--ink); }
.tolerance { fill: var(--band); }
.target { stroke: var(--quiet); stroke-dasharray: 2 3; }
.band { fill: var(--accent); fill-opacity: 0.28; }
.curve { stroke: var(--accent); stroke-width: 2.4px; }
@media screen and (max-width: 720px) {
  body { background: var(--paper); }
  main { margin: 0; padding: 18px 16px; border-radius: 0; box-shadow: none; }
  h1 { font-size: 25px; }
  .answer { font-size: 17px; }
  .keys { grid-template-columns: 1fr 1fr; }
  .columns { display: flex; flex-direction: column; gap: 16px; }
  .column { display: contents; }
  .bars { order: 1; }
  .why { order: 2; }
  .side { order: 3; }
  .map { order: 4; }
  .profile { order: 5; }
  .cost { order: 6; }
  .options { order: 7; }
  .sure { order: 8; }
  .sure.wide ul { columns: 1; }
  .scroll { overflow-x: auto; }
}
@page { margin: 9mm 12mm; }
@media print {
  body { background: none; font-size: 7.7pt; line-height: 1.25; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
  main { max-width: none; margin: 0; padding: 0; border-radius: 0; box-shadow: none; }
  h1 { font-size: 15pt; margin: 0 0 1pt; }
  .answer { font-size: 9.2pt; line-height: 1.25; }
  h2 { font-size: 9pt; margin-bottom: 2pt; padding-top: 2pt; border-top-width: 1pt; }
  .keys { gap: 5pt; margin: 4pt 0 5pt; }
  .keys div { padding-left: 4pt; border-left-width: 1.5pt; }
  .keys dt { font-size: 7pt; line-height: 1.1; }
  .keys dd { font-size: 9.5pt; white-space: nowrap; }
  .keys dd small { font-size: 6.6pt; display: inline; margin-left: 2pt; }
  .columns { gap: 0 15pt; }
  .column { gap: 5pt; }
  .side svg { max-height: 128pt; }
  .map svg { max-height: 142pt; }
  .bars svg { max-height: 82pt; }
  .profile svg { max-height: 118pt; }
  li { margin-bottom: 1.6pt; padding-left: 10pt; }
  li::before { width: 7pt; }
  table { font-size: 7.2pt; margin-bottom: 3pt; }
  thead th { font-size: 6.8pt; }
  th, td { padding: 0.8pt 0 0.8pt 4pt; }
  .note, footer { font-size: 6.4pt; line-height: 1.2; }
  .sure.wide { margin-top: 4pt; }
  .columns, .sure.wide { margin-bottom: 3pt; }
  .sure.wide ul { column-gap: 15pt; }
  footer { padding-top: 2pt; }
  .dense { font-size: 7pt; line-height: 1.2; }
  .dense .side svg { max-height: 112pt; }
  .dense .map svg { max-height: 128pt; }
  .dense .profile svg { max-height: 100pt; }
}
`;
