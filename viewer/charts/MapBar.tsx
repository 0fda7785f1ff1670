/** The colour bar of a map: unit, round values, mean and tolerance. */
import { useId } from 'react';
import { barTexts } from '../../workers/picture/colourBar.ts';
import type { MapSubject } from '../../workers/picture/mapSubject.ts';
import { colourAt } from '../../workers/picture/paint.ts';

const WIDTH = 16;
const STOPS = 32;
const LINE = 15;
/** From the middle of a line of type to its base line, CSS pixels. */
const TO_BASE = 4.3;

interface MapBarProps {
  readonly subject: MapSubject;
  readonly left: number;
  readonly top: number;
  readonly height: number;
}

export function MapBar({ subject, left, top, height }: MapBarProps) {
  const gradient = useId();
  if (height < 4 * LINE) return null;
  const { ticks, marks, beyond } = barTexts(subject, LINE / height);
  const yAt = (share: number): number => top + height * (1 - share);
  return (
    <g className="map-bar">
      <linearGradient id={gradient} x1="0" y1="1" x2="0" y2="0">
        {Array.from({ length: STOPS + 1 }, (_, i) => (
          <stop key={i} offset={i / STOPS} stopColor={colourAt(subject.palette, i / STOPS)} />
        ))}
      </linearGradient>
      <text className="map-bar-unit" x={left + WIDTH} y={top - 10}>
        {subject.unit.unit}
      </text>
      <rect x={left} y={top} width={WIDTH} height={height} fill={`url(#${gradient})`} />
      {ticks.map(({ text, share }) => (
        <g key={text} transform={`translate(${left + WIDTH} ${yAt(share)})`}>
          <path d="M0 0h5" />
          <text x={8} y={TO_BASE}>
            {text}
          </text>
        </g>
      ))}
      {marks.map(({ text, share, textShare }) => (
        <g key={text} className={text === 'mean' ? 'key' : undefined}>
          <path
            className={text.startsWith('+') ? 'dashed' : undefined}
            d={`M${left - 14} ${yAt(textShare)}l8 ${yAt(share) - yAt(textShare)}h6`}
          />
          <text className="end" x={left - 18} y={yAt(textShare) + TO_BASE}>
            {text}
          </text>
        </g>
      ))}
      {beyond.length > 0 && (
        <text className="end quiet-text" x={left + WIDTH + 46} y={top + height + 16}>
          {beyond.join(', ')} off the scale
        </text>
      )}
    </g>
  );
}
