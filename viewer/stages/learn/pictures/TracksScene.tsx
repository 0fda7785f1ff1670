/** Tracks of atoms in the tank, in 3D, with buttons to look from elsewhere. */
import { RotateCcw, RotateCw } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import type { Plant } from '../../../../engine/index.ts';
import { useColors } from '../../../state/useColors.ts';
import { createTracksView, type TrackLines, type TracksView, type ViewName } from './tracksView.ts';

interface TracksSceneProps {
  readonly plant: Plant;
  readonly lines: TrackLines;
  readonly description: string;
}

/** rad of one press */
const TURN = Math.PI / 12;
const VIEWS: readonly (readonly [ViewName, string])[] = [
  ['whole', 'Tank'],
  ['side', 'Side'],
  ['axis', 'Axis'],
];

export function TracksScene({ plant, lines, description }: TracksSceneProps) {
  const place = useRef<HTMLDivElement>(null);
  const view = useRef<TracksView | null>(null);
  const colors = useColors();
  const latest = useRef({ lines, colors });
  latest.current = { lines, colors };
  const [failure, setFailure] = useState(false);
  useEffect(() => {
    const holder = place.current;
    if (!holder) return undefined;
    const canvas = holder.appendChild(document.createElement('canvas'));
    let made: TracksView;
    try {
      made = createTracksView(canvas, plant);
    } catch {
      canvas.remove();
      setFailure(true);
      return undefined;
    }
    view.current = made;
    made.paint(latest.current.colors);
    made.setTracks(latest.current.lines);
    const watch = new ResizeObserver(() => made.resize(holder.clientWidth, holder.clientHeight));
    watch.observe(holder);
    return () => {
      watch.disconnect();
      made.dispose();
      canvas.remove();
      view.current = null;
    };
  }, [plant]);
  useEffect(() => view.current?.setTracks(lines), [lines]);
  useEffect(() => view.current?.paint(colors), [colors]);
  if (failure)
    return (
      <p className="chart-missing">
        This browser cannot draw in 3D: it needs WebGL 2. The numbers do not depend on it.
      </p>
    );
  return (
    <div className="learn-scene">
      <div className="learn-scene-canvas" ref={place} role="img" aria-label={description} />
      <div className="learn-scene-tools no-print" role="group" aria-label="Look from elsewhere">
        <button type="button" className="icon" aria-label="Turn left" onClick={() => view.current?.turn(-TURN)}>
          <RotateCw aria-hidden="true" size={16} />
        </button>
        <button type="button" className="icon" aria-label="Turn right" onClick={() => view.current?.turn(TURN)}>
          <RotateCcw aria-hidden="true" size={16} />
        </button>
        {VIEWS.map(([name, text]) => (
          <button key={name} type="button" onClick={() => view.current?.look(name)}>
            {text}
          </button>
        ))}
      </div>
    </div>
  );
}
