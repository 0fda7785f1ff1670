/** The views as buttons, and what the picture shows. */
import { RotateCcw, ZoomIn, ZoomOut } from 'lucide-react';
import { ShowButton } from './ShowButton.tsx';
import { useView, VIEWS } from './views.ts';

const CLOSER = 0.8;

export function SceneToolbar() {
  const { view, actions } = useView();
  return (
    <div className="scene-toolbar" role="toolbar" aria-label="View">
      <div className="scene-views" role="group" aria-label="Looked at from">
        {VIEWS.map(({ name, label, key }) => (
          <button
            key={name}
            type="button"
            aria-pressed={view === name}
            aria-keyshortcuts={key}
            title={`${label} (key ${key})`}
            onClick={() => actions?.show(name)}
          >
            {label}
          </button>
        ))}
      </div>
      <button
        type="button"
        className="icon"
        aria-label="Reset view"
        aria-keyshortcuts="0"
        title="Reset view (key 0)"
        onClick={() => actions?.reset()}
      >
        <RotateCcw aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        aria-label="Zoom in"
        title="Zoom in (+)"
        onClick={() => actions?.zoom(CLOSER)}
      >
        <ZoomIn aria-hidden="true" size={16} />
      </button>
      <button
        type="button"
        className="icon"
        aria-label="Zoom out"
        title="Zoom out (−)"
        onClick={() => actions?.zoom(1 / CLOSER)}
      >
        <ZoomOut aria-hidden="true" size={16} />
      </button>
      <ShowButton />
    </div>
  );
}
