/** Puts labels and handles, which are plain elements over the picture, in their places with each frame. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, type RefObject } from 'react';
import type { PerspectiveCamera } from 'three';
import { useUnits } from '../state/units.ts';
import type { Handle } from './handles.ts';
import { labelsOf, type Label } from './labels.ts';
import { isFree, shifted, wayOut, type Box } from './labelRoom.ts';
import { usePicture } from './picture.ts';
import { followCamera, useRingAngle } from './ringAngle.ts';
import { toScreen } from './sceneAccess.ts';
import { currentHandles } from './useHandles.ts';

interface OverlayPlacerProps {
  /** holds one element with data-anchor for each label, and one for "probe" */
  readonly labels: RefObject<HTMLDivElement | null>;
  /** holds grips and lines of the handles */
  readonly handles: RefObject<HTMLDivElement | null>;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const OFF_SCREEN = 'translate(-1000px, -1000px)';
/** How far a label may be moved from its place, px; a feed's number not at all, it would name another coil. */
const REACH = 120;
/** Length of a handle's line as a share of the tank's radius, and the least and most on screen, px. */
const HANDLE_SHARE = 0.16;
const LEAST_HANDLE = 14;

/** Measured once for each text: reading sizes while writing places would make the browser lay out twice. */
const measured = new WeakMap<HTMLElement, { readonly text: string; readonly box: Box }>();

function boxOf(element: HTMLElement): Box {
  const text = element.textContent ?? '';
  const known = measured.get(element);
  if (known?.text === text) return known.box;
  const { offsetLeft: left, offsetTop: top, offsetWidth: width, offsetHeight: height } = element;
  const box: Box = [left, top, left + width, top + height];
  if (width > 0) measured.set(element, { text, box });
  return box;
}

function elementsOf(root: HTMLElement, attribute: string): Map<string, HTMLElement> {
  return new Map(
    [...root.querySelectorAll<HTMLElement>(`[${attribute}]`)].map((el) => [el.getAttribute(attribute)!, el]),
  );
}

function placeLabel(label: Label, element: HTMLElement, at: readonly [number, number] | null, room: Room): void {
  const text = element.querySelector<HTMLElement>('.label-text');
  if (!at || !text) {
    element.style.transform = OFF_SCREEN;
    return;
  }
  const box = shifted(boxOf(text), at[0], at[1]);
  const isFixed = label.kind === 'feed';
  const move = isFixed
    ? isFree(box, room.taken)
      ? ([0, 0] as const)
      : null
    : wayOut(box, room.taken, room.frame, REACH);
  element.style.transform = `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px)`;
  text.style.visibility = move ? '' : 'hidden';
  if (!move) return;
  text.style.transform = `translate(${move[0].toFixed(1)}px, ${move[1].toFixed(1)}px)`;
  room.taken.push(shifted(box, move[0], move[1]));
}

/** What is left of the picture for labels. */
interface Room {
  readonly taken: Box[];
  readonly frame: Box;
}

/** Room that legend and signs take. */
function takenAround(stage: HTMLElement): Box[] {
  const origin = stage.getBoundingClientRect();
  return [...stage.querySelectorAll('[data-keep-clear]')].map((element) => {
    const { left, top, right, bottom } = element.getBoundingClientRect();
    return [left - origin.left, top - origin.top, right - origin.left, bottom - origin.top];
  });
}

function placeHandle(
  root: HTMLElement,
  handle: Handle,
  camera: PerspectiveCamera,
  size: Size,
  length: number,
  room: Room,
) {
  const grip = root.querySelector<HTMLElement>(`[data-handle="${handle.key}"]`);
  const line = root.querySelector<SVGGElement>(`[data-handle-line="${handle.key}"]`);
  if (!grip || !line) return;
  const from = toScreen(camera, size, handle.origin);
  const tip = handle.origin.map((v, k) => v + length * handle.direction[k as 0]) as [number, number, number];
  const to = toScreen(camera, size, tip);
  const run = from && to ? Math.hypot(to[0] - from[0], to[1] - from[1]) : 0;
  const isEndOn = run < LEAST_HANDLE;
  grip.style.visibility = isEndOn ? 'hidden' : '';
  line.style.visibility = isEndOn ? 'hidden' : '';
  if (isEndOn || !from || !to) return;
  for (const stroke of line.querySelectorAll('line')) {
    for (const [name, value] of [
      ['x1', from[0]],
      ['y1', from[1]],
      ['x2', to[0]],
      ['y2', to[1]],
    ] as const)
      stroke.setAttribute(name, value.toFixed(1));
  }
  line.querySelector('circle')?.setAttribute('transform', `translate(${from[0].toFixed(1)} ${from[1].toFixed(1)})`);
  const [, , width, height] = boxOf(grip);
  const [ux, uy] = [(to[0] - from[0]) / run, (to[1] - from[1]) / run];
  // the grip touches the line's end with the side that faces it
  const left = to[0] + (ux * width) / 2 - width / 2;
  const top = to[1] + (uy * height) / 2 - height / 2;
  const box: Box = [left, top, left + width, top + height];
  const move = wayOut(box, room.taken, room.frame, REACH) ?? [0, 0];
  grip.style.transform = `translate(${(left + move[0]).toFixed(1)}px, ${(top + move[1]).toFixed(1)}px)`;
  room.taken.push(shifted(box, move[0], move[1]));
}

export function OverlayPlacer({ labels, handles }: OverlayPlacerProps) {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => {
    const stops = [useUnits, useRingAngle].map((store) => store.subscribe(() => invalidate()));
    return () => stops.forEach((stop) => stop());
  }, [invalidate]);
  useFrame(({ camera, size }) => {
    const { picture } = usePicture.getState();
    const root = labels.current;
    const stage = root?.parentElement;
    if (!picture || !root || !stage) return;
    camera.updateMatrixWorld(); // a frame's hooks run before three does this itself
    const view = camera as PerspectiveCamera;
    followCamera(view);
    const room: Room = { taken: takenAround(stage), frame: [0, 0, size.width, size.height] };
    const length = HANDLE_SHARE * picture.plant.tank.radius;
    if (handles.current)
      for (const handle of currentHandles()) placeHandle(handles.current, handle, view, size, length, room);
    const elements = elementsOf(root, 'data-anchor');
    for (const label of labelsOf(picture, useUnits.getState())) {
      const element = elements.get(label.key);
      if (element) placeLabel(label, element, toScreen(view, size, label.position), room);
    }
    const probe = elements.get('probe');
    const at = picture.reading && toScreen(view, size, picture.reading.position);
    if (probe) probe.style.transform = at ? `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px)` : OFF_SCREEN;
  });
  return null;
}
