/** What may come a moment after the rest of the page, so that the browser lays out both in turn. */
import { useDeferredValue, type ReactNode } from 'react';

export function Later({ children }: { readonly children: ReactNode }) {
  return useDeferredValue(true, false) ? children : null;
}
