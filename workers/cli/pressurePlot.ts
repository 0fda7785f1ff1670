/** The plot of a shot against pressure: thickness above, where the vapour ends below. */
import { scaleLinear, scaleLog } from 'd3-scale';
import { line } from 'd3-shape';
import type { Plant } from '../../engine/index.ts';
import { INK, QUIET, svgPicture, svgText } from '../picture/svgText.ts';
import type { Counted } from '../../engine/gas/scatterSummary.ts';
import type { PressureRow } from './pressureRows.ts';

const WIDTH = 880;
const LEFT = 72;
const RIGHT = 200;
const PANEL = 240;
const TOPS = [72, 372] as const;
const HEIGHT = TOPS[1] + PANEL + 56;
const PA_PER_MBAR = 100;

interface Curve {
  readonly name: string;
  readonly values: readonly number[];
  /** standard errors of the values */
  readonly errors: readonly number[];
  /** SVG dash pattern: lines are told apart without colour */
  readonly dash: string;
}

type Scale = (value: number) => number;

/** Names at the right end, kept a line apart. */
function nameHeights(wanted: readonly number[]): number[] {
  const order = wanted.map((_, i) => i).toSorted((i, j) => wanted[i]! - wanted[j]!);
  const heights = [...wanted];
  order.forEach((i, k) => {
    if (k > 0) heights[i] = Math.max(heights[i]!, heights[order[k - 1]!]! + 16);
  });
  return heights;
}

function panel(top: number, title: string, pressures: readonly number[], x: Scale, curves: readonly Curve[]): string[] {
  const y = scaleLinear(
    [0, Math.max(...curves.flatMap(({ values, errors }) => values.map((value, k) => value + errors[k]!)))],
    [top + PANEL, top],
  ).nice(5);
  const right = WIDTH - RIGHT;
  const whiskers = (values: readonly number[], errors: readonly number[]): string =>
    values
      .map((value, k) => {
        const [low, high] = [Math.max(0, value - errors[k]!), value + errors[k]!];
        return `M${x(pressures[k]!).toFixed(1)} ${y(low).toFixed(1)}V${y(high).toFixed(1)}`;
      })
      .join('');
  const heights = nameHeights(curves.map(({ values }) => y(values.at(-1) ?? 0)));
  return [
    svgText(LEFT, top - 10, title, { weight: 600 }),
    ...y
      .ticks(5)
      .flatMap((tick) => [
        `<path d="M${LEFT} ${y(tick).toFixed(1)}H${right}" stroke="${QUIET}" stroke-opacity="0.25"/>`,
        svgText(LEFT - 8, y(tick) + 5, String(tick), { anchor: 'end', fill: QUIET }),
      ]),
    ...curves.flatMap(({ name, values, errors, dash }, i) => [
      `<path d="${
        line<number>(
          (_, k) => x(pressures[k]!),
          (value) => y(value),
        )([...values]) ?? ''
      }" fill="none" stroke="${INK}" stroke-width="2"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`,
      `<path d="${whiskers(values, errors)}" stroke="${INK}" stroke-width="1"/>`,
      svgText(right + 8, heights[i]! + 5, name),
    ]),
    `<path d="M${LEFT} ${top}V${top + PANEL}H${right}" fill="none" stroke="${INK}"/>`,
  ];
}

export function pressurePlot({ name, vacuum }: Plant, rows: readonly PressureRow[]): string {
  const pressures = rows.map(({ pressure }) => pressure / PA_PER_MBAR);
  const [low, high] = [pressures[0]!, pressures.at(-1)!];
  // a single pressure has no span of its own
  const x = scaleLog(low < high ? [low, high] : [low / 2, low * 2], [LEFT, WIDTH - RIGHT]);
  const decades = x.ticks().filter((tick) => Number.isInteger(Math.round(1e9 * Math.log10(tick)) / 1e9));
  const curve = (name: string, dash: string, factor: number, pick: (row: PressureRow) => Counted): Curve => ({
    name,
    dash,
    values: rows.map((row) => factor * pick(row).value),
    errors: rows.map((row) => factor * pick(row).standardError),
  });
  return svgPicture(WIDTH, HEIGHT, `${name}, against pressure`, [
    svgText(LEFT - 32, 34, `${name}, in ${vacuum.gas}`, { size: 20, weight: 600 }),
    ...panel(TOPS[0], 'Thickness, nm', pressures, x, [
      curve('thickest', '2 4', 1e9, (row) => row.maximum),
      curve('mean', '', 1e9, (row) => row.mean),
      curve('thinnest', '8 4', 1e9, (row) => row.minimum),
    ]),
    ...panel(TOPS[1], 'Share of the vapour, %', pressures, x, [
      curve('straight to the mirror', '', 100, (row) => row.straight),
      curve('scattered onto it', '8 4', 100, (row) => row.scattered),
      curve('elsewhere', '2 4', 100, (row) => row.lost),
    ]),
    ...decades.flatMap((tick) => {
      const at = x(tick).toFixed(1);
      return [
        `<path d="M${at} ${TOPS[1] + PANEL}v5M${at} ${TOPS[0] + PANEL}v5" stroke="${INK}"/>`,
        svgText(x(tick), TOPS[1] + PANEL + 22, tick.toExponential(0).replace('e+', 'e'), {
          anchor: 'middle',
          fill: QUIET,
        }),
      ];
    }),
    svgText(WIDTH - RIGHT, HEIGHT - 12, 'pressure, mbar', { anchor: 'end' }),
    svgText(LEFT, HEIGHT - 12, 'strokes: standard errors of counted atoms', { size: 12, fill: QUIET }),
  ]);
}
