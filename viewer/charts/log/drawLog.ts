/** What lies over the lines of a chart: thresholds, measured readings, and each line's name at its end. */
import type { Colors } from '../../state/useColors.ts';
import { uPlot } from '../plot.ts';
import { isShown } from './logTable.ts';
import type { LogChartData, LogPoints } from './logChartTypes.ts';

/** CSS pixels. */
const LINE = 15;
const SIGN = 4;
const FONT_SIZE = 12;

/** Draws within the plot's area, with CSS pixels as the unit. */
function within(plot: uPlot, draw: (ctx: CanvasRenderingContext2D) => void): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  ctx.scale(uPlot.pxRatio, uPlot.pxRatio);
  ctx.font = `${FONT_SIZE}px system-ui, sans-serif`;
  draw(ctx);
  ctx.restore();
}

/** The plot's area, CSS pixels. */
function areaOf({ bbox }: uPlot) {
  const [left, top, width, height] = [bbox.left, bbox.top, bbox.width, bbox.height].map((v) => v / uPlot.pxRatio) as [
    number,
    number,
    number,
    number,
  ];
  return { left, top, right: left + width, bottom: top + height };
}

/** Writes on a ground of the panel's colour, so that lines behind do not cut through. */
function write(ctx: CanvasRenderingContext2D, text: string, x: number, y: number, ink: string, colors: Colors): void {
  ctx.lineJoin = 'round';
  ctx.lineWidth = 4;
  ctx.strokeStyle = colors['surface-1'];
  ctx.strokeText(text, x, y);
  ctx.fillStyle = ink;
  ctx.fillText(text, x, y);
}

const placeOf = (plot: uPlot, value: number, axis: 'x' | 'y'): number =>
  plot.valToPos(value, axis, true) / uPlot.pxRatio;

/** Thresholds of the y axis are named at the left, or all at the right where the name of a line is in the way. */
export function drawThresholds(plot: uPlot, data: LogChartData, colors: Colors): void {
  const { left, top, right, bottom } = areaOf(plot);
  const { thresholds = [] } = data;
  within(plot, (ctx) => {
    const names = placeNames(plot, ctx, data);
    const sizeOf = (label: string, at: number) => ({
      width: ctx.measureText(label).width,
      base: at < top + LINE ? at + LINE - 2 : at - 4,
    });
    const isLeft = thresholds.every(({ axis, value, label }) => {
      if (axis === 'x') return true;
      const { width, base } = sizeOf(label, placeOf(plot, value, axis));
      return !names.some((name) => collide(name, { width, right: left + 6 + width, base }));
    });
    for (const { axis, value, label } of thresholds) {
      const at = placeOf(plot, value, axis);
      ctx.strokeStyle = colors['text-2'];
      ctx.lineWidth = 1;
      ctx.setLineDash([1.5, 3]);
      ctx.beginPath();
      ctx.moveTo(axis === 'x' ? at : left, axis === 'x' ? top : at);
      ctx.lineTo(axis === 'x' ? at : right, axis === 'x' ? bottom : at);
      ctx.stroke();
      ctx.setLineDash([]);
      ctx.textAlign = 'left';
      if (axis === 'x') {
        write(ctx, label, at + 4, bottom - 6, colors['text-2'], colors);
        continue;
      }
      const { width, base } = sizeOf(label, at);
      write(ctx, label, isLeft ? left + 6 : right - 6 - width, base, colors['text-2'], colors);
    }
  });
}

function signPath(ctx: CanvasRenderingContext2D, sign: LogPoints['sign'], x: number, y: number): void {
  ctx.beginPath();
  if (sign === 'square') ctx.rect(x - SIGN, y - SIGN, 2 * SIGN, 2 * SIGN);
  else if (sign === 'diamond') {
    const reach = SIGN * Math.SQRT2;
    ctx.moveTo(x, y - reach);
    ctx.lineTo(x + reach, y);
    ctx.lineTo(x, y + reach);
    ctx.lineTo(x - reach, y);
    ctx.closePath();
  } else ctx.arc(x, y, SIGN, 0, 2 * Math.PI);
}

/** Signs of the readings in the order in which they are given, unless they name one. */
export const SIGNS = ['circle', 'square', 'diamond'] as const;

export function drawReadings(plot: uPlot, { points = [], xAxis, yAxis }: LogChartData, colors: Colors): void {
  within(plot, (ctx) => {
    ctx.strokeStyle = colors.text;
    ctx.fillStyle = colors['surface-1'];
    ctx.lineWidth = 1.5;
    points.forEach(({ x, y, sign }, kind) => {
      for (let i = 0; i < x.length; i++) {
        if (!isShown(xAxis, x[i]!) || !isShown(yAxis, y[i]!)) continue;
        signPath(ctx, sign ?? SIGNS[kind % SIGNS.length], placeOf(plot, x[i]!, 'x'), placeOf(plot, y[i]!, 'y'));
        ctx.fill();
        ctx.stroke();
      }
    });
  });
}

/** Names of lines as far down as they need to go to keep clear of each other. */
export function spread(heights: readonly number[], top: number, bottom: number): number[] {
  const order = heights.map((_, i) => i).toSorted((a, b) => heights[a]! - heights[b]!);
  const placed = [...heights];
  let next = top + LINE;
  for (const i of order) {
    placed[i] = Math.max(next, placed[i]!);
    next = placed[i] + LINE;
  }
  // what ran out of the plot below is pushed up again
  let most = bottom - 2;
  for (const i of order.toReversed()) {
    placed[i] = Math.min(most, placed[i]!);
    most = placed[i] - LINE;
  }
  return placed;
}

/** A line's name in its place, CSS pixels; the text ends at `right`. */
interface PlacedName {
  readonly label: string;
  readonly width: number;
  readonly right: number;
  readonly base: number;
  /** place of the line among the series */
  readonly k: number;
}

/** Each line's name over its last point in view. */
function placeNames(plot: uPlot, ctx: CanvasRenderingContext2D, { series, xAxis, yAxis }: LogChartData): PlacedName[] {
  const { left, top, right, bottom } = areaOf(plot);
  const ends = series.flatMap(({ label, x, y }, k) => {
    for (let i = x.length - 1; i >= 0; i--) {
      if (!isShown(xAxis, x[i]!) || !isShown(yAxis, y[i]!)) continue;
      const [px, py] = [placeOf(plot, x[i]!, 'x'), placeOf(plot, y[i]!, 'y')];
      if (px >= left && px <= right + 1 && py >= top - 1 && py <= bottom + 1) return [{ label, px, py, k }];
    }
    return [];
  });
  const heights = spread(
    ends.map(({ py }) => py - 6),
    top,
    bottom,
  );
  return ends.map(({ label, px, k }, i) => {
    const { width } = ctx.measureText(label);
    return { label, width, right: Math.max(left + width + 4, px - 4), base: heights[i]!, k };
  });
}

export function drawNames(plot: uPlot, data: LogChartData, inks: readonly string[], colors: Colors): void {
  within(plot, (ctx) => {
    ctx.textAlign = 'right';
    for (const { label, right, base, k } of placeNames(plot, ctx, data))
      write(ctx, label, right, base, inks[k % inks.length]!, colors);
  });
}

/** A text on one line, CSS pixels. */
type TextPlace = Pick<PlacedName, 'width' | 'right' | 'base'>;

/** Whether two texts would run into each other. */
export function collide(a: TextPlace, b: TextPlace): boolean {
  return a.right - a.width < b.right && b.right - b.width < a.right && Math.abs(a.base - b.base) < LINE;
}
