/** What the profile chart shows beside its lines: tolerance band, target, clear aperture. */
import { uPlot } from './plot.ts';
import type { Colors } from '../state/useColors.ts';
import type { ShownProfile } from './shownProfile.ts';

/** Distance between hatch lines, CSS pixels. */
const HATCH = 7;

/** Hatches the tolerance band and dashes its limits. */
export function drawToleranceBand(plot: uPlot, data: ShownProfile, colors: Colors): void {
  const { ctx, bbox } = plot;
  const [top = 0, bottom = 0] = [1 + data.tolerance, 1 - data.tolerance].map((factor) =>
    plot.valToPos(data.average * factor, 'y', true),
  );
  const ratio = uPlot.pxRatio;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  ctx.beginPath();
  ctx.rect(bbox.left, top, bbox.width, bottom - top);
  ctx.clip();
  ctx.strokeStyle = colors.line;
  ctx.lineWidth = ratio;
  ctx.beginPath();
  const height = bottom - top;
  for (let x = bbox.left - height; x < bbox.left + bbox.width; x += HATCH * ratio) {
    ctx.moveTo(x, bottom);
    ctx.lineTo(x + height, top);
  }
  ctx.stroke();
  ctx.lineWidth = 2 * ratio;
  ctx.strokeRect(bbox.left - ratio, top, bbox.width + 2 * ratio, height);
  ctx.restore();
}

/** Dashes the target across and the ends of the clear aperture upwards. */
export function drawTargetAndAperture(plot: uPlot, data: ShownProfile, colors: Colors): void {
  const { ctx, bbox } = plot;
  const ratio = uPlot.pxRatio;
  const line = (x0: number, y0: number, x1: number, y1: number): void => {
    ctx.beginPath();
    ctx.moveTo(x0, y0);
    ctx.lineTo(x1, y1);
    ctx.stroke();
  };
  const right = bbox.left + bbox.width;
  ctx.save();
  ctx.strokeStyle = colors['text-2'];
  ctx.lineWidth = ratio;
  ctx.setLineDash([6 * ratio, 4 * ratio]);
  const y = plot.valToPos(data.target, 'y', true);
  line(bbox.left, y, right, y);
  ctx.setLineDash([ratio, 3 * ratio]);
  ctx.lineWidth = 1.5 * ratio;
  for (const radius of data.clear) {
    const x = plot.valToPos(radius, 'x', true);
    if (x >= bbox.left - 1 && x <= right + 1) line(x, bbox.top, x, bbox.top + bbox.height);
  }
  ctx.restore();
}
