/** The signs in the picture, and how it is turned. */
import { memo } from 'react';
import type { Coat, Plant } from '../../engine/index.ts';
import { tolerance } from '../format/numbers.ts';
import { useDesign } from '../state/designStore.ts';
import { thicknessRange_nm } from './colorScale.ts';
import { feedLettersOf } from './feedSigns.ts';
import { stateOf } from './parts/coilsPart.ts';
import { clearEdges } from './parts/glassPart.ts';
import { usePicture } from './picture.ts';
import './caption.css';

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

function RingSign() {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <circle cx="6" cy="6" r="5" />
    </svg>
  );
}

function FrameSign() {
  return (
    <svg className="frame-sign" viewBox="0 0 16 12" width="16" height="12" aria-hidden="true">
      <path d="M1 4V1h4M11 1h4v3M15 8v3h-4M5 11H1V8" />
    </svg>
  );
}

/** The signs of filaments, as far as the plant has them. */
const FilamentSigns = memo(function FilamentSigns({ plant }: { readonly plant: Plant }) {
  const counts = { fires: 0, 'out of use': 0, 'no charge': 0 };
  for (const filament of plant.filaments) counts[stateOf(filament)]++;
  return (
    <>
      <li>
        <CoilSign /> fires ({counts.fires})
      </li>
      {counts['out of use'] > 0 && (
        <li>
          <CrossSign /> out of use ({counts['out of use']})
        </li>
      )}
      {counts['no charge'] > 0 && (
        <li>
          <RingSign /> no charge ({counts['no charge']})
        </li>
      )}
    </>
  );
});

/** The lines on the mirror, as far as it has them. */
const LineSigns = memo(function LineSigns({ coat }: { readonly coat: Coat }) {
  const { plant, statistics } = coat;
  const { film, shape } = plant;
  const [low, high] = thicknessRange_nm(coat);
  const mean = statistics.mean.value * 1e9;
  const limit = tolerance(film.tolerance).slice(1);
  return (
    <>
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
      {clearEdges(shape).length > 0 && (
        <li>
          <i className="line-sign rings" /> clear aperture
        </li>
      )}
    </>
  );
});

export function SceneCaption() {
  const picture = usePicture((state) => state.picture);
  const facing = useDesign((state) => state.current.file.mirror.facing ?? 'down');
  if (!picture) return null;
  const { plant, coat, options, selected } = picture;
  const turned = facing === 'up' ? null : facing === 'down' ? 'down' : 'sideways';
  const letters = options.showsFeeds ? feedLettersOf(plant) : '';
  const hasFeeds = plant.filaments.some(({ feed }) => feed !== null);
  return (
    <ul className="scene-caption" data-keep-clear>
      <FilamentSigns plant={plant} />
      {options.showsFeeds && (
        <li>
          {hasFeeds ? `colour and number: feed${letters === '' ? '' : ` (${letters})`}` : 'no feeds in this plant'}
        </li>
      )}
      <LineSigns coat={coat} />
      {options.showsPaths && (
        <li>
          <i className="line-sign path" /> feeds the probe
        </li>
      )}
      {options.showsPaths && (
        <li>
          <i className="line-sign path dashed" /> the same, blocked
        </li>
      )}
      {selected.length > 0 && (
        <li>
          <FrameSign /> selected
        </li>
      )}
      <li className="quiet">{turned ? `drawn face up; in the tank it faces ${turned}` : 'faces up'}; coils enlarged</li>
    </ul>
  );
}
