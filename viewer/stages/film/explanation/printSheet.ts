/** Prints a document alone: the page steps aside until the browser's dialog is closed. */
import './explanation.css';
import { fillSheet } from './fillSheet.ts';

export function printSheet(html: string): void {
  const host = document.createElement('div');
  host.className = 'print-sheet';
  document.body.append(host);
  fillSheet(host, html);
  document.body.dataset['printing'] = 'sheet';
  const clear = (): void => {
    host.remove();
    delete document.body.dataset['printing'];
  };
  window.addEventListener('afterprint', clear, { once: true });
  window.print();
}
