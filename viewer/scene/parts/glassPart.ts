/** The glass that carries the coat, its clear aperture, and its outline for a look from behind. */
import { BufferGeometry, DoubleSide, Group, Mesh, MeshLambertMaterial } from 'three';
import type { MirrorShape } from '../../../engine/geometry/mirrorShape.ts';
import { circleOnFace, glassGeometry } from '../glassGeometry.ts';
import { whenChanged } from '../whenChanged.ts';
import { createDynamicLine } from './dynamicLine.ts';
import type { ScenePart } from './scenePart.ts';

/** Height of lines above the face, as a share of the rim radius: enough to stay clear of its chords. */
export const LIFT = 0.002;
const DASH = 0.02;

/** Radii at which the clear aperture ends before the glass does, m. */
export function clearEdges({ clearInnerRadius, clearOuterRadius, holeRadius, rimRadius }: MirrorShape): number[] {
  return [
    ...(clearInnerRadius > holeRadius ? [clearInnerRadius] : []),
    ...(clearOuterRadius < rimRadius ? [clearOuterRadius] : []),
  ];
}

export interface GlassPart extends ScenePart {
  /** what a look from behind must pass through */
  readonly body: Mesh;
  /** drawn only from behind */
  readonly outline: Group;
}

export function createGlassPart(): GlassPart {
  const body = new Mesh(new BufferGeometry(), new MeshLambertMaterial({ side: DoubleSide }));
  body.name = 'glass body';
  const clear = [createDynamicLine({ dash: DASH }), createDynamicLine({ dash: DASH })];
  const edges = [createDynamicLine(), createDynamicLine()];
  const outline = new Group().add(...edges.map((line) => line.object));
  const object = new Group().add(body, outline, ...clear.map((line) => line.object));
  object.name = 'glass';
  let shape: MirrorShape;
  const reshape = whenChanged((_key: string) => {
    body.geometry.dispose();
    body.geometry = glassGeometry(shape);
    const lift = LIFT * shape.rimRadius;
    const clearRadii = clearEdges(shape);
    clear.forEach((line, i) => {
      line.object.visible = clearRadii[i] !== undefined;
      line.draw(circleOnFace(shape, clearRadii[i] ?? 0, lift));
    });
    edges[0]?.draw(circleOnFace(shape, Infinity, lift));
    edges[1]?.draw(circleOnFace(shape, shape.holeRadius, lift));
  });
  return {
    object,
    body,
    outline,
    update: ({ coat, colors }) => {
      ({ shape } = coat.plant);
      reshape(JSON.stringify(shape));
      body.material.color.set(colors['scene-glass']);
      for (const line of clear) line.paint(colors['scene-mark']);
      for (const line of edges) line.paint(colors['scene-mark']);
    },
    dispose: () => {
      body.geometry.dispose();
      body.material.dispose();
      for (const line of [...clear, ...edges]) line.dispose();
    },
  };
}
