/** A finished HTML document inside the page, with its own style sheet and out of reach of the page's. */
import { useEffect, useRef } from 'react';
import { fillSheet } from './fillSheet.ts';

interface SheetProps {
  readonly html: string;
  readonly label: string;
}

export function Sheet({ html, label }: SheetProps) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (host.current) fillSheet(host.current, html);
  }, [html]);
  return <div ref={host} className="explanation-sheet" role="document" aria-label={label} tabIndex={0} />;
}
