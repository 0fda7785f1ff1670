/** The tank in 3D with its legend, labels, handles, views and probe. */
import { memo, useEffect, useRef } from 'react';
import type { SharedRange } from '../format/mapScale.ts';
import { registerKeys } from '../panels/home/keys.ts';
import { useDesign } from '../state/designStore.ts';
import { useResult } from '../state/resultStore.ts';
import { useColors } from '../state/useColors.ts';
import { CameraRig } from './CameraRig.tsx';
import { ColorLegend } from './ColorLegend.tsx';
import { describeScene } from './describeScene.ts';
import { DragReadOut } from './DragReadOut.tsx';
import { HoverTip } from './HoverTip.tsx';
import { endKeyMoves } from './keyMoves.ts';
import { OverlayPlacer } from './OverlayPlacer.tsx';
import { followStores, setPicture, usePicture } from './picture.ts';
import { ProbeBar } from './ProbeBar.tsx';
import './scene.css';
import { SceneCanvas } from './SceneCanvas.tsx';
import { SceneCaption } from './SceneCaption.tsx';
import { SceneContent } from './SceneContent.tsx';
import { SceneFailure } from './SceneFailure.tsx';
import { SceneHandles } from './SceneHandles.tsx';
import { SCENE_KEY_HELP, SCENE_KEYS_TITLE } from './sceneKeyHelp.ts';
import { onSceneKey } from './sceneKeys.ts';
import { SceneLabels } from './SceneLabels.tsx';
import { ScenePointer } from './ScenePointer.tsx';
import { SceneToolbar } from './SceneToolbar.tsx';
import { SelectionStatus } from './SelectionStatus.tsx';

/** The canvas: rendered by React once, and from then on by its parts alone. */
const ScenePicture = memo(function ScenePicture() {
  const labels = useRef<HTMLDivElement>(null);
  const handles = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const describe = (): void => {
      const coat = usePicture.getState().picture?.coat;
      if (coat) canvas.current?.setAttribute('aria-label', describeScene(coat));
    };
    describe();
    return usePicture.subscribe(({ picture }, before) => {
      if (picture?.coat !== before.picture?.coat) describe();
    });
  }, []);
  return (
    <>
      <div
        className="scene-canvas"
        ref={canvas}
        role="application"
        aria-roledescription="3D picture"
        aria-describedby="scene-keys"
        tabIndex={0}
        onKeyDown={onSceneKey}
        onKeyUp={endKeyMoves}
        onBlur={endKeyMoves}
      >
        <SceneFailure>
          <SceneCanvas>
            <CameraRig />
            <SceneContent />
            <ScenePointer />
            <OverlayPlacer labels={labels} handles={handles} />
          </SceneCanvas>
        </SceneFailure>
      </div>
      <SceneLabels container={labels} />
      <SceneHandles container={handles} />
    </>
  );
});

interface SceneFigureProps {
  /** the range of the mapped quantity over all variants, in its unit, for colours that are shared */
  readonly sharedRange?: SharedRange;
}

export function SceneFigure({ sharedRange }: SceneFigureProps) {
  const hasCoat = useResult((state) => state.coat !== null);
  const name = useDesign((state) => state.current.plant.name);
  const colors = useColors();
  useEffect(() => setPicture(colors, sharedRange), [colors, sharedRange]);
  useEffect(() => followStores(), []);
  useEffect(() => registerKeys(SCENE_KEYS_TITLE, SCENE_KEY_HELP), []);
  return (
    <figure className="panel scene">
      <figcaption className="visually-hidden">The coat of {name} in its tank</figcaption>
      <p id="scene-keys" className="visually-hidden">
        Arrow keys turn the view, plus and minus zoom, 1 to 4 choose a view, 0 resets it. N and Shift N go through the
        parts, S selects the set of a filament, Escape clears. Alt with arrow keys, Page Up and Page Down moves the
        selected part by one step, with Shift by a tenth.
      </p>
      <SceneToolbar />
      <div className="scene-stage">
        {hasCoat && (
          <>
            <ScenePicture />
            <ColorLegend />
            <SceneCaption />
            <SelectionStatus />
            <HoverTip />
            <DragReadOut />
          </>
        )}
      </div>
      <ProbeBar />
    </figure>
  );
}
