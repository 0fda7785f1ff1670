/** Obstacles: their shape, and what it needs; of a mesh its file. */
import { useState } from 'react';
import { useDesign } from '../../state/designStore.ts';
import { withShape } from '../../state/edits/changeKind.ts';
import type { SolidShape } from '../../state/edits/obstacleShapes.ts';
import { ChoiceControl } from './fields/ChoiceControl.tsx';
import { FORMS } from './fields/readSchema.ts';
import { changeDesign, nameOfParts } from './formEdits.ts';
import { MeshDialog } from './dialogs.tsx';
import { NameField } from './NameField.tsx';
import type { Parts } from './partsOf.ts';

export function ObstacleFields({ parts }: { readonly parts: Parts<'obstacle'> }) {
  const obstacles = useDesign((state) => state.current.file.obstacles);
  const [isPicking, setPicking] = useState(false);
  const [first] = parts;
  const isMesh = first !== undefined && obstacles?.[first.index]?.shape === 'mesh';
  return (
    <>
      <div className="plant-grid">
        {first && parts.length === 1 && <NameField part={first} />}
        <ChoiceControl
          field={FORMS.obstacle}
          path={[]}
          except={['mesh']}
          replaced={{ name: null }}
          onConvert={(shape) =>
            changeDesign(`shape of ${nameOfParts(parts)}`, (file) =>
              parts.reduce((next, { index }) => withShape(next, index, shape as SolidShape), file),
            )
          }
        />
      </div>
      {parts.length === 1 && (
        <div className="plant-actions">
          <button type="button" onClick={() => setPicking(true)}>
            {isMesh ? 'Another STL file…' : 'Take its shape from an STL file…'}
          </button>
        </div>
      )}
      {isPicking && first && <MeshDialog iObstacle={first.index} onClose={() => setPicking(false)} />}
    </>
  );
}
