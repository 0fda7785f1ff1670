/** Where on the mirror the coat leaves its tolerance: a full line at the lower limit, a dashed one at the upper. */
import { Group } from 'three';
import type { Coat } from '../../../engine/index.ts';
import { faceTriangles, type Face } from '../../../engine/geometry/face.ts';
import { contourSegments } from '../contourSegments.ts';
import { whenChanged } from '../whenChanged.ts';
import { createDynamicLine } from './dynamicLine.ts';
import { LIFT } from './glassPart.ts';
import type { ScenePart } from './scenePart.ts';

/** Cividis runs from dark blue to yellow: white and black each stand out at their own end. */
const LOWER_LINE = '#ffffff';
const UPPER_LINE = '#000000';
const DASH = 0.015;

export function createTolerancePart(): ScenePart {
  const lower = createDynamicLine({ isPairs: true });
  const upper = createDynamicLine({ isPairs: true, dash: DASH });
  lower.paint(LOWER_LINE);
  upper.paint(UPPER_LINE);
  const object = new Group();
  object.add(lower.object, upper.object);
  let triangles = new Uint32Array(0);
  const retriangulate = whenChanged((face: Face) => {
    triangles = faceTriangles(face.cells) as Uint32Array<ArrayBuffer>;
  });
  const redraw = whenChanged(({ face, thickness, plant, statistics }: Coat) => {
    const { position } = face.points;
    const mean = statistics.mean.value;
    const { tolerance } = plant.film;
    lower.draw(contourSegments(position, triangles, thickness, (1 - tolerance) * mean));
    upper.draw(contourSegments(position, triangles, thickness, (1 + tolerance) * mean));
    object.position.z = LIFT * plant.shape.rimRadius;
  });
  return {
    object,
    update: ({ coat }) => {
      retriangulate(coat.face);
      redraw(coat);
    },
    dispose: () => {
      lower.dispose();
      upper.dispose();
    },
  };
}
