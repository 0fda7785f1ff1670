/** Pixels and pictures by the browser's own canvas. */

/** Pixels per unit of a picture: sharp in print and on dense screens. */
const DENSITY = 2;

function canvasOf(width: number, height: number): readonly [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  const context = canvas.getContext('2d');
  if (!context) throw new Error('the browser cannot draw on a canvas');
  return [canvas, context];
}

/** RGBA bytes of a square as a data: URL. */
export function pixelsUrl(bytes: Uint8ClampedArray<ArrayBuffer>, size: number): string {
  const [canvas, context] = canvasOf(size, size);
  context.putImageData(new ImageData(bytes, size, size), 0, 0);
  return canvas.toDataURL('image/png');
}

/** A self-contained SVG picture as PNG. */
export async function svgToPng(svg: string): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const [canvas, context] = canvasOf(DENSITY * image.width, DENSITY * image.height);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the browser made no picture'))), 'image/png');
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}
