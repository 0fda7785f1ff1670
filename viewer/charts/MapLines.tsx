/** The lines, marks and labels of a map. */
import { useId } from 'react';
import type { MapDrawing } from '../../workers/picture/mapDrawing.ts';

const SQUARE = 3.5;
/** From the middle of a line of type to its base line, CSS pixels. */
const TO_BASE = 4.3;

export function MapLines({ drawing }: { readonly drawing: MapDrawing }) {
  const clip = useId();
  const { outline, aperture, lines, labels, witnesses, places, filaments, scaleBar } = drawing;
  return (
    <g className="map-lines">
      <clipPath id={clip}>
        <path d={outline} clipRule="evenodd" />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        {lines.map(({ path, ink, isKey, isDashed }) => (
          <path
            key={`${isKey} ${path}`}
            className={`map-contour${isKey ? ' key' : ''}${isDashed ? ' dashed' : ''}`}
            d={path}
            stroke={ink}
          />
        ))}
      </g>
      <path className="map-outline" d={outline} />
      {aperture && <path className="map-aperture" d={aperture} />}
      {filaments && <path className="map-filaments" d={filaments} />}
      {witnesses.map(([x, y]) => (
        <rect
          key={`${x} ${y}`}
          className="map-witness"
          x={x - SQUARE}
          y={y - SQUARE}
          width={2 * SQUARE}
          height={2 * SQUARE}
        />
      ))}
      {places.map(({ path }) => (
        <path key={path} className="map-place" d={path} />
      ))}
      {labels.map(({ text, x, y, turn, isKey }) => (
        <text
          key={`${text} ${x} ${y}`}
          className={isKey ? 'map-label key' : 'map-label'}
          transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(1)})`}
          y={TO_BASE}
        >
          {text}
        </text>
      ))}
      <path className="map-scale-bar" d={`M${scaleBar.x + 1} ${scaleBar.y - 5}v5h${scaleBar.length}v-5`} />
      <text className="map-scale-text" x={scaleBar.x + 5} y={scaleBar.y - 7}>
        {scaleBar.text}
      </text>
    </g>
  );
}
