/** What the charts of the film show, from the engine's report. */
import type { FilmReport } from '../../../engine/film/filmReport.ts';
import type { ShownUnit } from '../../../workers/picture/mapSubject.ts';
import type { LogChartData, LogThreshold } from '../../charts/log/logChartTypes.ts';
import { shownText } from '../../charts/shownUnits.ts';
import { percent } from '../../format/numbers.ts';

export interface FilmChart {
  readonly title: string;
  readonly description: string;
  readonly data: LogChartData;
}

const NM = 1e9;
const DAY = 86_400;
const inPercent = (shares: Float64Array): Float64Array => shares.map((share) => 100 * share);

/** The mirror's thinnest, mean and thickest place; one line where they would lie on each other. */
function mirrorMarks({ curve }: FilmReport, unit: ShownUnit): LogThreshold[] {
  const at = (value: number): number => value * NM * unit.factor;
  const { low, mean, high } = curve.mirror;
  const end = curve.thickness.at(-1)!;
  const isNarrow = high - low < end / 12;
  return isNarrow
    ? [{ axis: 'x', value: at(mean), label: 'this mirror' }]
    : [
        { axis: 'x', value: at(low), label: 'thinnest' },
        { axis: 'x', value: at(mean), label: 'mean' },
        { axis: 'x', value: at(high), label: 'thickest' },
      ];
}

const inUnit = (thickness: Float64Array, unit: ShownUnit): Float64Array =>
  thickness.map((value) => value * NM * unit.factor);

export function thicknessChart(report: FilmReport, unit: ShownUnit): FilmChart {
  const { curve, thinnest, mean, thickest } = report;
  return {
    title: 'Reflectance against thickness',
    description: `Reflectance against thickness, ${report.light}: ${percent(thinnest.reflected, 2)} at the thinnest place, ${percent(mean.reflected, 2)} at the mean thickness, ${percent(thickest.reflected, 2)} at the thickest place.`,
    data: {
      xAxis: { label: 'Thickness', unit: unit.unit, scale: 'linear' },
      yAxis: { label: 'Share of light', unit: '%', scale: 'linear', range: [0, 100] },
      series: [
        { label: 'reflected', x: inUnit(curve.thickness, unit), y: inPercent(curve.reflected) },
        { label: 'let through', x: inUnit(curve.thickness, unit), y: inPercent(curve.transmitted) },
      ],
      thresholds: mirrorMarks(report, unit),
    },
  };
}

/** Shares below this are no longer drawn, %. */
const LEAST_SHOWN = 1e-8;

export function transmissionChart(report: FilmReport, unit: ShownUnit): FilmChart {
  const { curve, opaque, thinnest } = report;
  const [lamp] = opaque;
  const limit = lamp?.criterion.when.kind === 'transmitted' ? lamp.criterion.when.limit : null;
  const opaqueFrom =
    lamp && Number.isFinite(lamp.thickness)
      ? ` A lamp in a lit room is hidden from ${shownText(lamp.thickness * NM, unit, 0)} on.`
      : '';
  return {
    title: 'Light let through, against thickness',
    description: `Share of light let through against thickness: ${percent(thinnest.transmitted, 6)} at the thinnest place.${opaqueFrom}`,
    data: {
      xAxis: { label: 'Thickness', unit: unit.unit, scale: 'linear' },
      yAxis: { label: 'Let through', unit: '%', range: [LEAST_SHOWN, 100] },
      series: [{ label: 'let through', x: inUnit(curve.thickness, unit), y: inPercent(curve.transmitted) }],
      thresholds: [
        ...mirrorMarks(report, unit),
        ...(limit === null ? [] : [{ axis: 'y', value: 100 * limit, label: 'a lamp is seen above this' } as const]),
      ],
    },
  };
}

export function spectrumChart({ spectrum, light }: FilmReport): FilmChart {
  const x = spectrum.wavelength.map((value) => value * NM);
  const [low, high] = [x[0]!, x.at(-1)!];
  return {
    title: 'Spectrum',
    description: `Reflectance against wavelength from ${low.toFixed(0)} to ${high.toFixed(0)} nm at the thinnest place, the mean thickness and the thickest place; the map is for ${light}.`,
    data: {
      xAxis: { label: 'Wavelength', unit: 'nm', scale: 'linear', range: [low, high] },
      yAxis: { label: 'Reflected', unit: '%', scale: 'linear' },
      series: [
        { label: 'mean thickness', x, y: inPercent(spectrum.atMean) },
        { label: 'thinnest', x, y: inPercent(spectrum.atThinnest) },
        { label: 'thickest', x, y: inPercent(spectrum.atThickest) },
      ],
    },
  };
}

export function ageingChart({ ageing, light }: FilmReport): FilmChart {
  const x = ageing.map(({ time }) => time / DAY);
  const [first, last] = [ageing[0]!, ageing.at(-1)!];
  return {
    title: 'As the oxide grows',
    description: `Reflectance against time in air, ${light}: ${percent(first.reflected, 2)} after an hour, ${percent(last.reflected, 2)} after two years.`,
    data: {
      xAxis: { label: 'Time in air', unit: 'd' },
      yAxis: { label: 'Reflected', unit: '%', scale: 'linear' },
      series: [{ label: 'at the mean thickness', x, y: ageing.map(({ reflected }) => 100 * reflected) }],
    },
  };
}
