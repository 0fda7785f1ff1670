/** Whether mirror and tank contradict themselves or each other. */
import type { MirrorDesign } from '../design/designSchema.ts';
import { backHeight, faceHeights, mirrorShape, sag, type MirrorShape } from '../geometry/mirrorShape.ts';
import type { Tank } from '../geometry/tank.ts';
import { metres, type Report } from './checkReport.ts';

/** The shape, unless the mirror contradicts itself. */
export function checkMirror(mirror: MirrorDesign, report: Report): MirrorShape | undefined {
  const shape = mirrorShape(mirror);
  let isSound = true;
  const fail = (path: string, message: string): void => {
    isSound = false;
    report(path, message);
  };
  if (shape.holeRadius >= shape.rimRadius)
    fail(
      'mirror.holeDiameter',
      `expected a hole smaller than the glass (${metres(mirror.outerDiameter)}); found ${metres(mirror.holeDiameter)}`,
    );
  if (mirror.clearAperture?.outerDiameter !== undefined && mirror.clearAperture.outerDiameter > mirror.outerDiameter) {
    fail(
      'mirror.clearAperture.outerDiameter',
      `expected at most the outer diameter of the glass (${metres(mirror.outerDiameter)}); found ${metres(mirror.clearAperture.outerDiameter)}`,
    );
  }
  if (shape.clearInnerRadius >= shape.clearOuterRadius)
    fail(
      'mirror.clearAperture',
      `expected an inner diameter smaller than the outer one; found ${metres(2 * shape.clearInnerRadius)} and ${metres(2 * shape.clearOuterRadius)}`,
    );
  const reach = shape.centerX + shape.rimRadius;
  const end = 1 / Math.abs(shape.curvature) / Math.sqrt(Math.max(0, 1 + shape.conicConstant));
  if (!Number.isFinite(sag(shape, reach)) || (1 + shape.conicConstant) * (shape.curvature * reach) ** 2 > 0.999) {
    fail(
      'mirror.radiusOfCurvature',
      `expected a surface that reaches the rim at ${metres(reach)}; this one ${Number.isFinite(end) ? `ends at ${metres(end)}` : 'is infinitely high there'}`,
    );
  }
  return isSound ? shape : undefined;
}

export function checkTank(tank: Tank, shape: MirrorShape, report: Report): Tank | undefined {
  let isSound = true;
  const fail = (path: string, message: string): void => {
    isSound = false;
    report(path, message);
  };
  if (shape.rimRadius > tank.radius)
    fail(
      'tank.diameter',
      `expected a tank wider than the glass (${metres(2 * shape.rimRadius)}); found ${metres(2 * tank.radius)}`,
    );
  if (backHeight(shape) < tank.lowZ)
    fail(
      'tank.behindMirror',
      `expected at least ${metres(-backHeight(shape))}, where the glass ends; found ${metres(-tank.lowZ)}`,
    );
  if (faceHeights(shape).high >= tank.highZ)
    fail(
      'tank.depth',
      `expected a tank deeper than the glass; its end wall would be at z = ${metres(tank.highZ)}, the face reaches ${metres(faceHeights(shape).high)}`,
    );
  return isSound ? tank : undefined;
}
