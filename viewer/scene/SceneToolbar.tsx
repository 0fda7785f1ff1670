/** The views, as buttons. */
import { Circle, RotateCcw, ZoomIn, ZoomOut } from 'lucide-react';
import type { ViewActions } from './CameraRig.tsx';

interface SceneToolbarProps {
  readonly view: ViewActions | null;
  readonly fromZero: boolean;
  readonly onFromZero: (fromZero: boolean) => void;
}

const CLOSER = 0.8;

export function SceneToolbar({ view, fromZero, onFromZero }: SceneToolbarProps) {
  return (
    <div className="scene-toolbar" role="toolbar" aria-label="View">
      <button type="button" onClick={() => view?.show('first')}>
        <RotateCcw aria-hidden="true" size={16} /> Reset view
      </button>
      <button type="button" onClick={() => view?.show('face-on')}>
        <Circle aria-hidden="true" size={16} /> Face on
      </button>
      <div className="zooms">
        <button type="button" className="icon" aria-label="Zoom in" title="Zoom in" onClick={() => view?.zoom(CLOSER)}>
          <ZoomIn aria-hidden="true" size={16} />
        </button>
        <button
          type="button"
          className="icon"
          aria-label="Zoom out"
          title="Zoom out"
          onClick={() => view?.zoom(1 / CLOSER)}
        >
          <ZoomOut aria-hidden="true" size={16} />
        </button>
      </div>
      <label className="check">
        <input type="checkbox" checked={fromZero} onChange={(event) => onFromZero(event.target.checked)} />
        Colours from zero
      </label>
    </div>
  );
}
