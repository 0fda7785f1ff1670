/** The radial profile and the area by thickness as self-contained pictures. */
import { area, line } from 'd3-shape';
import type { Coat } from '../../engine/index.ts';
import { INK } from '../../workers/picture/svgText.ts';
import { histogramOf } from '../charts/areaShares.ts';
import { profileData } from '../charts/profileData.ts';
import { lengthUnit, thicknessUnit } from '../charts/shownUnits.ts';
import { tolerance } from '../format/numbers.ts';
import type { Units } from '../state/units.ts';
import { BOTTOM, chartPicture, LEFT, RIGHT, TOP, type KeyItem, type Scale } from './chartFrame.ts';
import { textFile } from './fileKinds.ts';
import { svgToPng } from './svgToPng.ts';

const ACCENT = '#34566f';
const BAND = `fill="${ACCENT}" fill-opacity="0.14"`;
const MEAN = `fill="none" stroke="${INK}" stroke-width="2.5"`;
const TARGET = `fill="none" stroke="${INK}" stroke-width="1.5" stroke-dasharray="1.5 4"`;
const DASH = `fill="none" stroke="${INK}" stroke-width="1.2" stroke-dasharray="6 4"`;
/** Room above and below the lines, as a share of what they span. */
const ROOM = 0.06;

const lineKey = (style: string, text: string): KeyItem => ({ sign: `<path d="M0 0h26" ${style}/>`, text });
const boxKey = (style: string, text: string): KeyItem => ({
  sign: `<rect y="-6" width="26" height="12" ${style}/>`,
  text,
});

const across = (y: Scale, value: number, style: string): string =>
  `<path d="M${LEFT} ${y(value).toFixed(1)}H${RIGHT}" ${style}/>`;
const upright = (x: Scale, value: number, style: string): string =>
  `<path d="M${x(value).toFixed(1)} ${TOP}V${BOTTOM}" ${style}/>`;

/** Thickness against radius. */
export function profileSvg(coat: Coat, units: Units): string {
  const data = profileData(coat);
  const [thickness, length] = [thicknessUnit(units), lengthUnit(units)];
  const scaled = (values: Float64Array): number[] => Array.from(values, (value) => value * thickness.factor);
  const [mean, least, most] = [scaled(data.mean_nm), scaled(data.minimum_nm), scaled(data.maximum_nm)];
  const radius = Array.from(data.radius, (r) => r * length.factor);
  const average = data.average_nm * thickness.factor;
  const target = data.target_nm * thickness.factor;
  const limits = [average * (1 - data.tolerance), average * (1 + data.tolerance)];
  const all = [...least, ...most, ...limits, target];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = ROOM * (high - low || 1);
  return chartPicture(
    coat,
    'radial profile',
    { label: `Radius, ${length.unit}`, domain: [radius[0]!, radius.at(-1)!] },
    { label: `Thickness, ${thickness.unit}`, domain: [Math.max(0, low - room), high + room], isRound: true },
    [
      lineKey(MEAN, 'mean over azimuth'),
      boxKey(BAND, 'least to most'),
      lineKey(DASH, `average ${tolerance(data.tolerance)}`),
      lineKey(TARGET, 'target'),
    ],
    ({ x, y }) => {
      const band = area<number>()
        .x((_, i) => x(radius[i]!))
        .y0((_, i) => y(least[i]!))
        .y1((_, i) => y(most[i]!));
      const curve = line<number>()
        .x((_, i) => x(radius[i]!))
        .y((value) => y(value));
      return [
        `<path d="${band(mean) ?? ''}" ${BAND}/>`,
        ...limits.map((limit) => across(y, limit, DASH)),
        across(y, target, TARGET),
        `<path d="${curve(mean) ?? ''}" ${MEAN}/>`,
      ];
    },
  );
}

const HATCH =
  '<pattern id="outside" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
  `<path d="M0 0v7" stroke="${ACCENT}" stroke-width="3"/></pattern>`;

/** Share of the clear aperture against thickness. */
export function histogramSvg(coat: Coat, units: Units): string {
  const { bins, mean_nm, limits_nm, tolerance: limit } = histogramOf(coat);
  const { unit, factor } = thicknessUnit(units);
  const [low, high] = limits_nm;
  const most = Math.max(...bins.map(({ share }) => 100 * share));
  return chartPicture(
    coat,
    'area by thickness',
    { label: `Thickness, ${unit}`, domain: [bins[0]!.low * factor, bins.at(-1)!.high * factor] },
    { label: 'Share of the clear aperture, %', domain: [0, most], isRound: true },
    [
      lineKey(MEAN, 'mean'),
      lineKey(DASH, `mean ${tolerance(limit)}`),
      boxKey(`fill="${ACCENT}" fill-opacity="0.75"`, 'within'),
      boxKey(`fill="url(#outside)" stroke="${ACCENT}"`, 'outside'),
    ],
    ({ x, y }) => [
      HATCH,
      ...bins.map((bin) => {
        const [left, right] = [x(bin.low * factor), x(bin.high * factor)];
        const isOutside = bin.high <= low || bin.low >= high;
        const top = y(100 * bin.share);
        return `<rect x="${(left + 0.5).toFixed(2)}" y="${top.toFixed(2)}" width="${Math.max(0.5, right - left - 1).toFixed(2)}" height="${(BOTTOM - top).toFixed(2)}" fill-opacity="0.75" fill="${isOutside ? 'url(#outside)' : ACCENT}" stroke="${ACCENT}"/>`;
      }),
      ...limits_nm.map((value) => upright(x, value * factor, DASH)),
      upright(x, mean_nm * factor, MEAN),
    ],
  );
}

export type ChartName = 'profile' | 'histogram';

function chartSvg(name: ChartName, coat: Coat, units: Units): string {
  return name === 'profile' ? profileSvg(coat, units) : histogramSvg(coat, units);
}

export async function exportChartSvg(name: ChartName, coat: Coat, units: Units): Promise<Blob> {
  return textFile(chartSvg(name, coat, units), 'svg');
}

export async function exportChartPng(name: ChartName, coat: Coat, units: Units): Promise<Blob> {
  return svgToPng(chartSvg(name, coat, units));
}
