/** One thing wrong with a design: where, and what would be right. */
export interface Problem {
  /** where in the file, such as filaments[0].diameter; empty for the file as a whole */
  readonly path: string;
  /** what was expected and what was found */
  readonly message: string;
}

/** Writes a path as people read it: filaments[0].diameter. Keys that are not plain words are quoted. */
export function joinPath(parts: readonly PropertyKey[]): string {
  let text = '';
  for (const part of parts) {
    if (typeof part === 'number') text += `[${part}]`;
    else if (/^[A-Za-z_]\w*$/.test(String(part))) text += text ? `.${String(part)}` : String(part);
    else text += `[${JSON.stringify(String(part))}]`;
  }
  return text;
}

/** One problem as one line: "vacuum.pressure: expected …". */
export function formatProblem({ path, message }: Problem): string {
  return path ? `${path}: ${message}` : message;
}
