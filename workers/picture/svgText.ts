/** Pieces of SVG for pictures that stand alone: on white, without styles, scripts or references. */

export const INK = '#1c2329';
export const QUIET = '#535f6a';
export const FONT = 'Inter, system-ui, sans-serif';

/** Text as character data: no sign of it can be read as markup. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

export interface TextStyle {
  readonly size?: number;
  readonly weight?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: string;
  /** a pale rim around the letters, for text over a picture */
  readonly hasHalo?: boolean;
  /** degrees, clockwise */
  readonly turn?: number;
}

export function svgText(x: number, y: number, content: string, style: TextStyle = {}): string {
  const { size = 14, weight = 400, anchor = 'start', fill = INK, hasHalo = false, turn = 0 } = style;
  const at = `x="${x.toFixed(2)}" y="${y.toFixed(2)}"${turn === 0 ? '' : ` transform="rotate(${turn.toFixed(1)} ${x.toFixed(2)} ${y.toFixed(2)})"`}`;
  const font = `font-family="${FONT}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}"`;
  const body = `${escaped(content)}</text>`;
  const halo = hasHalo
    ? `<text ${at} ${font} fill="none" stroke="#ffffff" stroke-opacity="0.85" stroke-width="${(0.28 * size).toFixed(1)}" stroke-linejoin="round">${body}`
    : '';
  return `${halo}<text ${at} ${font} fill="${fill}">${body}`;
}

/** Breaks a sentence into lines of at most `most` characters, at spaces. */
export function brokenLines(sentence: string, most: number): string[] {
  const lines = [''];
  for (const word of sentence.split(' ')) {
    const last = lines.length - 1;
    const longer = `${lines[last]} ${word}`.trim();
    if (longer.length <= most) lines[last] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A whole picture on white. */
export function svgPicture(width: number, height: number, title: string, body: readonly string[]): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `<title>${escaped(title)}</title>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
    ...body,
    '</svg>',
  ].join('\n');
}
