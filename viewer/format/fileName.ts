/** Names for files. */

/** A file name from the plant's name: "Tarn Hill 2.6 m" becomes "tarn-hill-2-6-m.json". */
export function fileNameOf(name: string): string {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu);
  return `${words?.join('-') ?? 'design'}.json`;
}
