/** While something is dragged, panels and picture wait a moment for the coat, so as to move with it. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { presets } from '../../presets/index.ts';
import type { Coat } from '../../engine/index.ts';
import { drawTogether } from '../../viewer/scene/drawTogether.ts';
import type { Picture } from '../../viewer/scene/picture.ts';
import { catchUp, shownDesign, useDesign } from '../../viewer/state/designStore.ts';
import { beginGesture, cancelGesture, editDesign, endGesture } from '../../viewer/state/editDesign.ts';

const nameOf = (state: { readonly current: { readonly file: { readonly name: string } } }): string =>
  state.current.file.name;
function rename(name: string): void {
  expect(editDesign('name', (file) => ({ ...file, name }))).toEqual([]);
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  endGesture();
  vi.useRealTimers();
});

test('panels follow every edit; during a drag they wait to be told, or for its end', () => {
  rename('at once');
  expect(nameOf(shownDesign.getState())).toBe('at once');
  beginGesture();
  rename('dragged');
  expect(nameOf(useDesign.getState())).toBe('dragged');
  expect(nameOf(shownDesign.getState())).toBe('at once');
  catchUp();
  expect(nameOf(shownDesign.getState())).toBe('dragged');
  rename('dragged on');
  endGesture();
  expect(nameOf(shownDesign.getState())).toBe('dragged on');
  beginGesture();
  rename('thought better of');
  cancelGesture();
  expect(nameOf(shownDesign.getState())).toBe('dragged on');
});

test('panels are told of a change once', () => {
  const seen: string[] = [];
  const stop = shownDesign.subscribe((state) => seen.push(nameOf(state)));
  rename('first');
  catchUp();
  beginGesture();
  rename('second');
  rename('third');
  catchUp();
  catchUp();
  stop();
  expect(seen).toEqual(['first', 'third']);
});

/** A picture whose coat is that of its plant, or of the plant before. */
function pictureOf(isAhead: boolean): Picture {
  const plants = presets.slice(0, 2).map(({ file }) => file as unknown as Picture['plant']);
  return { plant: plants[0], coat: { plant: plants[isAhead ? 1 : 0] } as Coat } as Picture;
}

test('a picture is drawn with its coat, or a moment later without it', () => {
  const draw = vi.fn();
  const { follow } = drawTogether(draw);
  follow(pictureOf(false));
  expect(draw).toHaveBeenCalledTimes(1);
  follow(pictureOf(true));
  vi.advanceTimersByTime(10);
  expect(draw).toHaveBeenCalledTimes(1);
  follow(pictureOf(false));
  expect(draw).toHaveBeenCalledTimes(2);
  vi.advanceTimersByTime(1000);
  expect(draw).toHaveBeenCalledTimes(2);
  follow(pictureOf(true));
  follow(pictureOf(true));
  vi.advanceTimersByTime(1000);
  expect(draw).toHaveBeenCalledTimes(3);
});

test('a picture that is taken away is not drawn', () => {
  const draw = vi.fn();
  const { follow, stop } = drawTogether(draw);
  follow(pictureOf(true));
  stop();
  vi.advanceTimersByTime(1000);
  expect(draw).not.toHaveBeenCalled();
});
