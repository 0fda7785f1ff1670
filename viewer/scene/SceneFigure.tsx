/** The tank in 3D with its legend, labels, views and probe. */
import { Canvas } from '@react-three/fiber';
import { useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Coat } from '../../engine/index.ts';
import { useDesign } from '../state/designStore.ts';
import { useResult } from '../state/resultStore.ts';
import { useColors } from '../state/useColors.ts';
import { AnchoredLabels } from './AnchoredLabels.tsx';
import { CameraRig, type ViewActions } from './CameraRig.tsx';
import { ColorLegend } from './ColorLegend.tsx';
import { colorScaleOf } from './colorScale.ts';
import { describeScene } from './describeScene.ts';
import { PointerProbe } from './PointerProbe.tsx';
import { ProbeBar } from './ProbeBar.tsx';
import { SceneCaption } from './SceneCaption.tsx';
import { SceneFailure } from './SceneFailure.tsx';
import { anchorsOf, SceneLabels } from './SceneLabels.tsx';
import { SceneToolbar } from './SceneToolbar.tsx';
import { TankScene } from './TankScene.tsx';

const CAMERA = { up: [0, 0, 1] as [number, number, number], fov: 30 };
const TURN = Math.PI / 18;
const ZOOM = 0.9;

/** Moves of the view by key. */
const KEYS: Readonly<Record<string, (view: ViewActions) => void>> = {
  ArrowLeft: (view) => view.turn(-TURN, 0),
  ArrowRight: (view) => view.turn(TURN, 0),
  ArrowUp: (view) => view.turn(0, -TURN),
  ArrowDown: (view) => view.turn(0, TURN),
  '+': (view) => view.zoom(ZOOM),
  '=': (view) => view.zoom(ZOOM),
  '-': (view) => view.zoom(1 / ZOOM),
  Home: (view) => view.show('first'),
};

function CoatPicture({ coat }: { readonly coat: Coat }) {
  const colors = useColors();
  const [fromZero, setFromZero] = useState(false);
  const [view, setView] = useState<ViewActions | null>(null);
  const labels = useRef<HTMLDivElement>(null);
  const scale = useMemo(() => colorScaleOf(coat, fromZero), [coat, fromZero]);
  const anchors = useMemo(() => anchorsOf(coat), [coat]);
  const onKeyDown = (event: KeyboardEvent): void => {
    const move = KEYS[event.key];
    if (!move || !view || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    move(view);
  };
  return (
    <>
      <SceneToolbar view={view} fromZero={fromZero} onFromZero={setFromZero} />
      <div className="scene-stage">
        <div
          className="scene-canvas"
          role="img"
          aria-label={describeScene(coat)}
          aria-describedby="scene-keys"
          tabIndex={0}
          onKeyDown={onKeyDown}
        >
          <SceneFailure>
            <Canvas flat frameloop="demand" dpr={[1, 2]} camera={CAMERA}>
              <CameraRig plant={coat.plant} onReady={setView} />
              <TankScene coat={coat} scale={scale} colors={colors} />
              <PointerProbe plant={coat.plant} />
              <AnchoredLabels container={labels} anchors={anchors} />
            </Canvas>
          </SceneFailure>
          <SceneLabels coat={coat} container={labels} />
        </div>
        <ColorLegend coat={coat} scale={scale} />
        <SceneCaption coat={coat} />
      </div>
    </>
  );
}

export function SceneFigure() {
  const coat = useResult((state) => state.coat);
  const name = useDesign((state) => state.current.plant.name);
  return (
    <figure className="panel scene">
      <figcaption className="visually-hidden">The coat of {name} in its tank</figcaption>
      <p id="scene-keys" className="visually-hidden">
        Arrow keys turn the view, plus and minus zoom, Home resets it.
      </p>
      {coat ? <CoatPicture coat={coat} /> : <div className="scene-stage" />}
      <ProbeBar />
    </figure>
  );
}
