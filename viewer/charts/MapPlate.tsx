/** A face-on map: pixels on a canvas, lines, labels and colour bar as SVG above them. */
import { useEffect, useMemo, useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { mapReach, toPlace, type Frame } from '../../workers/picture/frame.ts';
import { mapDrawing, mapPixels, mapRaster, type MapRaster } from '../../workers/picture/mapDrawing.ts';
import type { MapSubject } from '../../workers/picture/mapSubject.ts';
import './charts.css';
import { MapBar } from './MapBar.tsx';
import { MapLines } from './MapLines.tsx';
import { useSize } from './useSize.ts';

/** Room for the colour bar with its numbers, CSS pixels. */
const BAR_ROOM = 136;
const PAD = 4;
const TYPE = 12;
/** Pixels of the raster at most; finer detail than the points of a coat does not exist. */
const MOST_PIXELS = 640;

interface MapPlateProps {
  readonly subject: MapSubject;
  readonly description: string;
  /** id of what explains the keys */
  readonly describedBy?: string;
  /** called with the place under the pointer, m */
  readonly onPoint?: (x: number, y: number) => void;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
  /** drawn over the map */
  readonly children?: (frame: Frame) => ReactNode;
}

function frameOf(subject: MapSubject, width: number, height: number): Frame {
  const size = Math.max(0, Math.floor(Math.min(width - BAR_ROOM, height) - 2 * PAD));
  const { plant } = subject;
  const top = Math.max(PAD, Math.floor((height - size) / 2));
  const left = Math.max(PAD, Math.floor((width - BAR_ROOM - size) / 2));
  return { centerX: plant.shape.centerX, reach: mapReach(plant), size, left, top };
}

interface MapCanvasProps {
  readonly subject: MapSubject;
  readonly raster: MapRaster;
  readonly frame: Frame;
  readonly outline: string;
}

/** The coloured pixels, cut to the outline of the glass. */
function MapCanvas({ subject, raster, frame, outline }: MapCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { size } = raster.raster;
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    context.putImageData(new ImageData(mapPixels(subject, raster), size, size), 0, 0);
    context.save();
    context.globalCompositeOperation = 'destination-in';
    context.scale(size / frame.size, size / frame.size);
    context.translate(-frame.left, -frame.top);
    context.fill(new Path2D(outline), 'evenodd');
    context.restore();
  }, [subject, raster, frame, outline, size]);
  const place = { left: frame.left, top: frame.top, width: frame.size, height: frame.size };
  return <canvas ref={canvas} width={size} height={size} style={place} aria-hidden="true" />;
}

export function MapPlate({ subject, description, describedBy, onPoint, onKeyDown, children }: MapPlateProps) {
  const [holder, { width, height }] = useSize<HTMLDivElement>();
  const frame = useMemo(() => frameOf(subject, width, height), [subject, width, height]);
  const pixels = Math.min(MOST_PIXELS, Math.round(frame.size * window.devicePixelRatio));
  const raster = useMemo(
    () => (pixels > 0 ? mapRaster(subject, frame.reach, pixels) : null),
    [subject, frame.reach, pixels],
  );
  const drawing = useMemo(() => raster && mapDrawing(subject, raster, frame, TYPE), [subject, raster, frame]);
  const frameId = useRef(0);
  useEffect(() => () => cancelAnimationFrame(frameId.current), []);
  const point = (event: PointerEvent<HTMLDivElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const [x, y] = toPlace(frame, event.clientX - box.left, event.clientY - box.top);
    cancelAnimationFrame(frameId.current);
    frameId.current = requestAnimationFrame(() => onPoint?.(x, y));
  };
  return (
    <div
      className="map-plate"
      ref={holder}
      role="img"
      aria-label={description}
      aria-describedby={describedBy}
      tabIndex={onKeyDown ? 0 : undefined}
      onKeyDown={onKeyDown}
      onPointerMove={onPoint && point}
      onPointerDown={onPoint && point}
    >
      {raster && drawing && (
        <>
          <MapCanvas subject={subject} raster={raster} frame={frame} outline={drawing.outline} />
          <svg width={width} height={height} aria-hidden="true">
            <MapLines drawing={drawing} />
            <MapBar
              subject={subject}
              left={frame.left + frame.size + BAR_ROOM - 66}
              top={frame.top + 24}
              height={frame.size - 48}
            />
            {children?.(frame)}
          </svg>
          {raster.bare && <p className="map-hatch-note">hatched: nothing arrives</p>}
        </>
      )}
    </div>
  );
}
