/** The signs in the picture, and how it is turned. */
import type { Coat } from '../../engine/index.ts';
import { tolerance } from '../format/numbers.ts';
import { useDesign } from '../state/designStore.ts';
import { thicknessRange_nm } from './colorScale.ts';
import { isFiring } from './FilamentCoils.tsx';

function CoilSign() {
  return (
    <svg viewBox="0 0 28 12" width="28" height="12" aria-hidden="true">
      <path d="M1 6c3-8 6-4 6 0s-3 6-2 0c2-8 7-6 7 0s-3 6-2 0c2-8 7-6 7 0s-3 6-2 0c2-8 7-4 8 0" />
    </svg>
  );
}

function CrossSign() {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <circle cx="6" cy="6" r="5" />
      <path d="M2.5 2.5l7 7M9.5 2.5l-7 7" />
    </svg>
  );
}

export function SceneCaption({ coat }: { readonly coat: Coat }) {
  const facing = useDesign((state) => state.current.file.mirror.facing ?? 'down');
  const { plant, statistics } = coat;
  const { filaments, shape, film } = plant;
  const idle = filaments.filter((filament) => !isFiring(filament)).length;
  const [low, high] = thicknessRange_nm(coat);
  const mean = statistics.mean.value * 1e9;
  const limit = tolerance(film.tolerance).slice(1);
  const turned = facing === 'up' ? null : facing === 'down' ? 'down' : 'sideways';
  return (
    <ul className="scene-caption">
      <li>
        <CoilSign /> fires ({filaments.length - idle})
      </li>
      {idle > 0 && (
        <li>
          <CrossSign /> out of use or empty ({idle})
        </li>
      )}
      {low < mean * (1 - film.tolerance) && (
        <li>
          <i className="line-sign full" /> {`\u2212${limit} of the mean`}
        </li>
      )}
      {high > mean * (1 + film.tolerance) && (
        <li>
          <i className="line-sign dashed" /> {`+${limit} of the mean`}
        </li>
      )}
      {(shape.clearInnerRadius > shape.holeRadius || shape.clearOuterRadius < shape.rimRadius) && (
        <li>
          <i className="line-sign rings" /> clear aperture
        </li>
      )}
      <li className="quiet">{turned ? `drawn face up; in the tank it faces ${turned}` : 'faces up'}; coils enlarged</li>
    </ul>
  );
}
