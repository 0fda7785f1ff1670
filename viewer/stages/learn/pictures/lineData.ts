/** Curves along a diameter, for charts. */

/** Arrays with a gap where the line crosses the hole in the glass: a value that is none. */
export function withGap(along: Float64Array, values: Float64Array): { readonly x: number[]; readonly y: number[] } {
  const x: number[] = [];
  const y: number[] = [];
  const usual = along.length > 2 ? along[1]! - along[0]! : 0;
  along.forEach((s, i) => {
    const before = along[i - 1];
    if (before !== undefined && s - before > 1.5 * usual) {
      x.push((s + before) / 2);
      y.push(NaN);
    }
    x.push(s);
    y.push(values[i]!);
  });
  return { x, y };
}
