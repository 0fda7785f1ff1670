/** The handles of the selected part: drawn over the picture, dragged by pointer or by arrow keys. */
import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type RefObject } from 'react';
import { beginGesture, cancelGesture, endGesture } from '../state/editDesign.ts';
import { useUnits } from '../state/units.ts';
import type { Handle } from './handles.ts';
import { lineAt } from './handleLine.ts';
import { endKeyMoves, moveByKey } from './keyMoves.ts';
import { moveTo } from './moveTo.ts';
import { useReadOut } from './readOutStore.ts';
import { finenessOf, readOut, snapped, stepOf } from './snap.ts';
import { useHandles } from './useHandles.ts';

/** A drag under way: the handle as it was when it began. */
interface Drag {
  readonly handle: Handle;
  readonly pointerId: number;
  /** where along the line it was seized, m */
  readonly seized: number;
  /** the last good value */
  value: number;
  frameId: number;
}

const SIGNS: Readonly<Record<Handle['key'], string>> = {
  x: 'x',
  y: 'y',
  z: 'z',
  diameter: '⌀',
  height: 'z',
  radius: 'r',
  angle: '∠',
};

const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 10,
  PageDown: -10,
};

/** Hidden until OverlayPlacer has put it in its place. */
const NOT_PLACED = { visibility: 'hidden' } as const;

function HandleGrip({ handle }: { readonly handle: Handle }) {
  const units = useUnits();
  const drag = useRef<Drag>(null);
  const follow = (event: PointerEvent<HTMLElement>): void => {
    const now = drag.current;
    if (!now) return;
    const { clientX, clientY } = event;
    const fineness = finenessOf(event);
    cancelAnimationFrame(now.frameId);
    now.frameId = requestAnimationFrame(() => {
      const along = lineAt(now.handle, clientX, clientY);
      if (along === null) return;
      const step = stepOf(now.handle.kind, fineness, units);
      const wanted = snapped(now.handle.value + (along - now.seized) * now.handle.perMetre, step);
      if (Math.abs(wanted - now.value) < step * 1e-6) return show(now, clientX, clientY, null);
      const { value, refusal } = moveTo(now.handle, now.value, wanted, step);
      now.value = value;
      show(now, clientX, clientY, refusal);
    });
  };
  const show = ({ handle: { label, kind }, value }: Drag, x: number, y: number, refusal: string | null): void =>
    useReadOut.setState({ read: { label, text: readOut(value, kind, units), refusal, at: [x, y] } });
  const begin = (event: PointerEvent<HTMLElement>): void => {
    if (event.button !== 0) return;
    const seized = lineAt(handle, event.clientX, event.clientY);
    if (seized === null) return;
    event.preventDefault();
    event.currentTarget.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { handle, pointerId: event.pointerId, seized, value: handle.value, frameId: 0 };
    beginGesture();
    show(drag.current, event.clientX, event.clientY, null);
  };
  const finish = (isKept: boolean): void => {
    if (!drag.current) return;
    cancelAnimationFrame(drag.current.frameId);
    drag.current = null;
    if (isKept) endGesture();
    else cancelGesture();
    const { read } = useReadOut.getState();
    useReadOut.setState({ read: read && { ...read, at: null } });
  };
  useEffect(() => () => finish(true), []);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && drag.current) {
      event.stopPropagation();
      return finish(false);
    }
    const steps = STEPS[event.key];
    if (steps === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    moveByKey({ handles: [handle.key], steps }, event.shiftKey);
  };
  const text = readOut(handle.value, handle.kind, units);
  return (
    <div
      className="scene-handle"
      role="spinbutton"
      tabIndex={0}
      data-handle={handle.key}
      style={NOT_PLACED}
      aria-label={handle.label}
      aria-valuenow={handle.value}
      aria-valuetext={text}
      title={`Drag to change the ${handle.label}`}
      onPointerDown={begin}
      onPointerMove={follow}
      onPointerUp={() => finish(true)}
      onPointerCancel={() => finish(false)}
      onKeyDown={onKeyDown}
      onKeyUp={endKeyMoves}
      onBlur={endKeyMoves}
    >
      <i>{SIGNS[handle.key]}</i> {text}
    </div>
  );
}

/** @param container holds one grip and one line for each handle; they are put in their places with each frame */
export function SceneHandles({ container }: { readonly container: RefObject<HTMLDivElement | null> }) {
  const handles = useHandles();
  return (
    <div className="scene-handles" role="group" aria-label="Handles of what is selected" ref={container}>
      <svg aria-hidden="true">
        {handles.map(({ key }) => (
          <g key={key} data-handle-line={key} style={NOT_PLACED}>
            <line className="handle-casing" />
            <line />
            <circle r="4" />
          </g>
        ))}
      </svg>
      {handles.map((handle) => (
        <HandleGrip key={handle.key} handle={handle} />
      ))}
    </div>
  );
}
