/** The new value beside the pointer, and why it goes no further. */
import { useLayoutEffect, useRef } from 'react';
import { useReadOut } from './readOutStore.ts';

const GAP = 18;

const between = (low: number, value: number, high: number): number => Math.max(low, Math.min(value, high));

export function DragReadOut() {
  const read = useReadOut((state) => state.read);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = box.current;
    const parent = element?.parentElement;
    if (!element || !parent || !read?.at) return;
    const { left, top, width, height } = parent.getBoundingClientRect();
    const x = between(4, read.at[0] - left + GAP, width - element.offsetWidth - 4);
    const y = between(4, read.at[1] - top + GAP, height - element.offsetHeight - 4);
    element.style.transform = `translate(${x}px, ${y}px)`;
  }, [read]);
  if (!read?.at) return null;
  return (
    <div className="drag-read-out" ref={box} aria-hidden="true">
      <b>{read.text}</b>
      {read.refusal !== null && <span>stops here: {read.refusal}</span>}
    </div>
  );
}
