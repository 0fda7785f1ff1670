/**
 * A canvas for the scene: fiber's root without its ready-made Canvas, which brings all of three
 * along. The scene has its own picking, so it needs no events either.
 */
import { createRoot, type ReconcilerRoot } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef, type ReactNode } from 'react';

const CAMERA = { up: [0, 0, 1] as [number, number, number], fov: 30 };
/** Sharp on fine displays, but no finer than the eye asks for. */
const MOST_PIXELS_PER_PIXEL = 2;

interface SceneCanvasProps {
  readonly children: ReactNode;
}

export function SceneCanvas({ children }: SceneCanvasProps) {
  const frame = useRef<HTMLDivElement>(null);
  const root = useRef<ReconcilerRoot<HTMLCanvasElement> | null>(null);
  const content = useRef(children);
  useLayoutEffect(() => {
    content.current = children;
    root.current?.render(children);
  }, [children]);
  useEffect(() => {
    const place = frame.current;
    if (!place) return undefined;
    // a canvas of its own for each mounting: a context once lost is not given back
    const canvas = place.appendChild(document.createElement('canvas'));
    const made = createRoot(canvas);
    const fit = (): void => {
      const { width, height } = place.getBoundingClientRect();
      if (width === 0 || height === 0) return;
      const dpr: [number, number] = [1, MOST_PIXELS_PER_PIXEL];
      void made.configure({
        flat: true,
        frameloop: 'demand',
        dpr,
        camera: CAMERA,
        size: { width, height, top: 0, left: 0 },
      });
      if (root.current) return;
      root.current = made;
      made.render(content.current);
    };
    const watch = new ResizeObserver(fit);
    watch.observe(place);
    fit();
    return () => {
      watch.disconnect();
      root.current = null;
      made.unmount();
      canvas.remove();
    };
  }, []);
  return <div ref={frame} className="scene-frame" />;
}
