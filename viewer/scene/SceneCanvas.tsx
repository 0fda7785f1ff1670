/**
 * A canvas for the scene: fiber's root without its ready-made Canvas, which brings all of three
 * along. The scene has its own picking, so it needs no events either.
 *
 * There is one canvas for the life of the page. Where the picture is not shown it is only taken out of the document: the
 * camera stands where it stood, and nothing has to be sent to the graphics card again, when it comes back.
 */
import { createRoot, type ReconcilerRoot } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import { nextTask } from '../state/nextTask.ts';
import { sceneAccess } from './sceneAccess.ts';

const CAMERA = { up: [0, 0, 1] as [number, number, number], fov: 30 };
/** Sharp on fine displays, but no finer than the eye asks for. */
const DPR: [number, number] = [1, 2];

interface SceneCanvasProps {
  readonly children: ReactNode;
}

interface KeptScene {
  readonly canvas: HTMLCanvasElement;
  readonly root: ReconcilerRoot<HTMLCanvasElement>;
  readonly gl: { readonly context?: WebGL2RenderingContext };
}

/** As three asks for it; asked for beforehand, because it takes a while. */
const CONTEXT: WebGLContextAttributes = { alpha: true, antialias: true, powerPreference: 'high-performance' };

let kept: KeptScene | null = null;

function theScene(): KeptScene {
  if (kept) return kept;
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('webgl2', CONTEXT);
  kept = { canvas, root: createRoot(canvas), gl: context ? { context } : {} };
  return kept;
}

export function SceneCanvas({ children }: SceneCanvasProps) {
  const frame = useRef<HTMLDivElement>(null);
  const content = useRef(children);
  const shown = useRef<KeptScene | null>(null);
  const [failure, setFailure] = useState<Error | null>(null);
  useLayoutEffect(() => {
    content.current = children;
    shown.current?.root.render(children);
  }, [children]);
  useEffect(() => {
    const place = frame.current;
    if (!place) return undefined;
    let watch: ResizeObserver | undefined;
    let isThere = true;
    const fail = (error: unknown): void => {
      kept?.canvas.remove();
      kept = null;
      setFailure(error instanceof Error ? error : new Error('the browser gave no reason'));
    };
    const show = (scene: KeptScene): void => {
      place.append(scene.canvas);
      const fit = async (): Promise<void> => {
        const { width, height } = place.getBoundingClientRect();
        if (width === 0 || height === 0) return;
        const size = { width, height, top: 0, left: 0 };
        const frameloop = sceneAccess() ? 'demand' : 'never'; // no frame before the content asks for one
        await scene.root.configure({ gl: scene.gl, flat: true, frameloop, dpr: DPR, camera: CAMERA, size });
        if (shown.current !== scene) {
          await nextTask();
          if (!isThere) return; // taken away meanwhile
          shown.current = scene;
          scene.root.render(content.current);
        }
        sceneAccess()?.invalidate();
      };
      watch = new ResizeObserver(() => {
        // the first time makes the renderer, which takes a task of its own
        const start = sceneAccess() ? fit() : nextTask().then(fit);
        start.catch(fail);
      });
      watch.observe(place);
    };
    const begin = async (): Promise<void> => {
      if (!kept) await nextTask(); // to ask for the graphics card takes a task of its own, too
      if (isThere) show(theScene());
    };
    begin().catch(fail);
    return () => {
      isThere = false;
      watch?.disconnect();
      shown.current = null;
      kept?.canvas.remove();
    };
  }, []);
  if (failure) throw failure;
  return <div ref={frame} className="scene-frame" />;
}
