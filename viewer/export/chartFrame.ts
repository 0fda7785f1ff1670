/** Title, axes and plot area that the exported charts share. */
import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { verdictOf, type Coat } from '../../engine/index.ts';
import { brokenLines, INK, QUIET, svgPicture, svgText } from '../../workers/picture/svgText.ts';

const WIDTH = 880;
const HEIGHT = 520;
export const LEFT = 84;
export const RIGHT = WIDTH - 32;
export const TOP = 124;
export const BOTTOM = HEIGHT - 64;
const LINE = '#cdd3d8';

/** One quantity along an axis. */
export interface Axis {
  readonly label: string;
  readonly domain: readonly [number, number];
  /** whether the ends move out to round values */
  readonly isRound?: boolean;
}

export type Scale = ScaleLinear<number, number>;

export interface ChartScales {
  readonly x: Scale;
  readonly y: Scale;
}

const scaleOf = ({ domain, isRound = false }: Axis, range: readonly [number, number]): Scale => {
  const scale = scaleLinear(domain, range);
  return isRound ? scale.nice() : scale;
};

/** An item of the key: a sign 26 wide, drawn with its left end in the middle of a line at 0, and its name. */
export interface KeyItem {
  readonly sign: string;
  readonly text: string;
}

function key(items: readonly KeyItem[]): string[] {
  let x = LEFT;
  return items.map(({ sign, text }) => {
    const item = `<g transform="translate(${x} ${TOP - 20})">${sign}${svgText(32, 4, text, { size: 12, fill: QUIET })}</g>`;
    x += 32 + 6.6 * text.length + 20;
    return item;
  });
}

function axes({ x, y }: ChartScales, xAxis: Axis, yAxis: Axis): string[] {
  const number = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '\u2212');
  return [
    ...y
      .ticks(6)
      .map(
        (tick) =>
          `<path d="M${LEFT} ${y(tick).toFixed(1)}H${RIGHT}" stroke="${LINE}"/>${svgText(LEFT - 8, y(tick) + 5, number(tick), { anchor: 'end' })}`,
      ),
    ...x
      .ticks(8)
      .map(
        (tick) =>
          `<path d="M${x(tick).toFixed(1)} ${BOTTOM}v6" stroke="${INK}"/>${svgText(x(tick), BOTTOM + 22, number(tick), { anchor: 'middle' })}`,
      ),
    `<path d="M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}" fill="none" stroke="${INK}"/>`,
    svgText((LEFT + RIGHT) / 2, BOTTOM + 46, xAxis.label, { anchor: 'middle', weight: 600 }),
    svgText(26, (TOP + BOTTOM) / 2, yAxis.label, { anchor: 'middle', weight: 600, turn: -90 }),
  ];
}

/** A chart of a coat as one self-contained SVG. */
export function chartPicture(
  coat: Coat,
  what: string,
  xAxis: Axis,
  yAxis: Axis,
  items: readonly KeyItem[],
  body: (scales: ChartScales) => readonly string[],
): string {
  const scales = { x: scaleOf(xAxis, [LEFT, RIGHT]), y: scaleOf(yAxis, [BOTTOM, TOP]) };
  const title = `${coat.plant.name}: ${what}`;
  return svgPicture(WIDTH, HEIGHT, title, [
    svgText(LEFT, 34, title, { size: 20, weight: 600 }),
    ...brokenLines(verdictOf(coat).sentence, 92).map((line, i) => svgText(LEFT, 58 + 18 * i, line)),
    ...key(items),
    `<clipPath id="plot"><rect x="${LEFT}" y="${TOP}" width="${RIGHT - LEFT}" height="${BOTTOM - TOP}"/></clipPath>`,
    ...axes(scales, xAxis, yAxis),
    '<g clip-path="url(#plot)">',
    ...body(scales),
    '</g>',
  ]);
}
