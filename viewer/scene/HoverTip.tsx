/** Name and charge of what is under the pointer. */
import { useDesign } from '../state/designStore.ts';
import { nameOfPart } from '../state/edits/parts.ts';
import { useResult } from '../state/resultStore.ts';
import { useUnits } from '../state/units.ts';
import { useHover } from './hoverStore.ts';
import { aboutPart } from './sceneText.ts';

export function HoverTip() {
  const hovered = useHover((state) => state.hovered);
  const design = useDesign((state) => state.current);
  const units = useUnits();
  if (!hovered || hovered.part.kind === 'mirror' || hovered.part.kind === 'tank') return null;
  const about = aboutPart(design, useResult.getState().coat, hovered.part, units);
  const [x, y] = hovered.at;
  return (
    <div className="scene-tip" aria-hidden="true" style={{ transform: `translate(${x + 14}px, ${y + 14}px)` }}>
      <b>{nameOfPart(design, hovered.part)}</b>
      {about !== '' && <span>{about}</span>}
    </div>
  );
}
