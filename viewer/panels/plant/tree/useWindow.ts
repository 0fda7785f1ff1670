/** Which rows of a long list are in sight, so that only they are drawn. */
import { useCallback, useLayoutEffect, useState, type RefObject } from 'react';

/** Height of a row, px; the style sheet says the same. */
export const ROW_HEIGHT = 28;
/** Rows drawn beyond either edge. */
const MARGIN = 8;

export interface Window {
  readonly first: number;
  /** behind the last */
  readonly end: number;
}

/** The rows in sight of a scrolling element; follows scrolling and size. */
export function useWindow(element: RefObject<HTMLElement | null>, count: number): Window {
  const [sight, setSight] = useState({ top: 0, height: 600 });
  const look = useCallback(() => {
    const { scrollTop: top = 0, clientHeight: height = 600 } = element.current ?? {};
    setSight((old) => (old.top === top && old.height === height ? old : { top, height }));
  }, [element]);
  useLayoutEffect(() => {
    const scrolling = element.current;
    if (!scrolling) return;
    // it looks at once, but after the page has been laid out
    const size = new ResizeObserver(look);
    size.observe(scrolling);
    scrolling.addEventListener('scroll', look, { passive: true });
    return () => {
      size.disconnect();
      scrolling.removeEventListener('scroll', look);
    };
  }, [element, look]);
  const first = Math.max(0, Math.min(count - 1, Math.floor(sight.top / ROW_HEIGHT) - MARGIN));
  return { first, end: Math.min(count, Math.ceil((sight.top + sight.height) / ROW_HEIGHT) + MARGIN) };
}

/** Scrolls as little as needed to bring a row into sight. */
export function bringIntoSight(element: HTMLElement, i: number): void {
  const top = i * ROW_HEIGHT;
  if (top < element.scrollTop) element.scrollTop = top;
  const bottom = top + ROW_HEIGHT - element.clientHeight;
  if (bottom > element.scrollTop) element.scrollTop = bottom;
}
