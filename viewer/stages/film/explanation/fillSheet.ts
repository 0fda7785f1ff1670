/** Puts a self-contained document into a shadow tree: its style sheet is constructed, as the page allows no inline ones. */

/** The style sheet of a document; it must be out before the document is parsed, or the page's policy complains. */
const STYLE = /<style>([\s\S]*?)<\/style>/;

/** The ground reaches to the edges, as a body's does. */
const FILL = '@media screen { .sheet-body { display: flow-root; min-height: 100%; } }';

/** What stands for the document's root and body inside the shadow tree. */
const asGuest = (css: string): string => css.replaceAll(':root', ':host').replace(/\bbody\b/g, '.sheet-body');

/** Shows a document in an element, in place of what was there. */
export function fillSheet(host: HTMLElement, html: string): void {
  const parsed = new DOMParser().parseFromString(html.replace(STYLE, ''), 'text/html');
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(asGuest(STYLE.exec(html)?.[1] ?? '') + FILL);
  const body = document.createElement('div');
  body.className = 'sheet-body';
  body.append(...document.importNode(parsed.body, true).childNodes);
  const shadow = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  shadow.adoptedStyleSheets = [sheet];
  shadow.replaceChildren(body);
}
