/** Curves along a diameter, for charts. */

/** How much longer than the others the step over the hole is. */
const HOLE = 1.5;

/** Thickness along a diameter, with none over the hole in the glass: the line falls to zero at its edges. */
export function overHole(
  along: Float64Array,
  values: Float64Array,
): { readonly x: readonly number[]; readonly y: readonly number[] } {
  const x: number[] = [];
  const y: number[] = [];
  const usual = along.length > 1 ? along[1]! - along[0]! : 0;
  along.forEach((s, i) => {
    const before = along[i - 1];
    if (before !== undefined && s - before > HOLE * usual) {
      const nearly = 1e-3 * usual;
      x.push(before + nearly, s - nearly);
      y.push(0, 0);
    }
    x.push(s);
    y.push(values[i]!);
  });
  return { x, y };
}
