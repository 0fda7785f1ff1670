/** One thing wrong with a design: where, and what would be right. */
export interface Problem {
  /** where in the file, such as filaments[0].diameter; empty for the file as a whole */
  readonly path: string;
  /** what was expected and what was found */
  readonly message: string;
}

/** Most problems that are told one by one. */
export const MAX_PROBLEMS = 100;

/** The first problems, and how many more there are. */
export function shortened(problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= MAX_PROBLEMS) return problems;
  const message = `… and ${problems.length - MAX_PROBLEMS} more problems`;
  return [...problems.slice(0, MAX_PROBLEMS), { path: '', message }];
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
