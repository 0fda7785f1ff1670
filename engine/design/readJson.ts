/** From the text of a file to a JSON value that is safe to look at. */
import { parse, printParseErrorCode, visit, type ParseError } from 'jsonc-parser';
import { joinPath, type Problem } from './problem.ts';

/** Largest design file, characters: 5,000 listed filaments take about 1 MB. */
export const MAX_TEXT = 8_000_000;
const MAX_DEPTH = 32;
const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

export type ReadJson =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly problems: readonly Problem[] };

function refuse(...messages: string[]): ReadJson {
  return { ok: false, problems: messages.map((message) => ({ path: '', message })) };
}

/** Deepest nesting of brackets outside strings; cheap, and safe where a recursive parser is not. */
function nestingDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (inString) {
      if (code === 92) i++;
      else if (code === 34) inString = false;
    } else if (code === 34) inString = true;
    else if (code === 123 || code === 91) deepest = Math.max(deepest, ++depth);
    else if (code === 125 || code === 93) depth--;
  }
  return deepest;
}

function placeOf(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return `line ${line}, column ${offset - before.lastIndexOf('\n')}`;
}

/** "InvalidSymbol" → "invalid symbol". */
function inWords(code: string): string {
  return code.replace(/(?<=[a-z])(?=[A-Z])/g, ' ').toLowerCase();
}

function syntaxProblem(text: string): string {
  const errors: ParseError[] = [];
  try {
    parse(text, errors, { disallowComments: true });
  } catch {
    // brackets that the count above took for text: the parser runs out of stack, after the first error
  }
  const [first] = errors;
  if (!first) return 'expected JSON; this text is not';
  return `expected JSON; ${inWords(printParseErrorCode(first.error))} at ${placeOf(text, first.offset)}`;
}

/** Keys written twice in one object, and keys that no design may hold, each with its path. */
function keyProblems(text: string): Problem[] {
  const problems: Problem[] = [];
  const open: Set<string>[] = [];
  visit(text, {
    onObjectBegin: () => void open.push(new Set()),
    onObjectEnd: () => void open.pop(),
    onObjectProperty: (key, _offset, _length, line, column, pathSupplier) => {
      const seen = open.at(-1);
      const fault = FORBIDDEN_KEYS.has(key)
        ? `the key "${key}" is not allowed`
        : seen?.has(key)
          ? 'written twice in the same place'
          : undefined;
      if (fault) {
        const path = joinPath([...pathSupplier(), key]);
        problems.push({ path, message: `${fault} (line ${line + 1}, column ${column + 1})` });
      }
      seen?.add(key);
    },
  });
  return problems;
}

/**
 * Reads JSON text: refuses what is too large, too deep or broken, with line and column, and keys
 * that are written twice or reserved.
 */
export function readJson(text: string): ReadJson {
  if (text.length > MAX_TEXT)
    return refuse(
      `expected a file of at most ${MAX_TEXT / 1e6} million characters; found ${(text.length / 1e6).toFixed(1)} million`,
    );
  if (text.trim() === '') return refuse('expected a design; the file is empty');
  const depth = nestingDepth(text);
  if (depth > MAX_DEPTH) return refuse(`expected at most ${MAX_DEPTH} levels of nesting; found ${depth}`);
  const bare = text.replace(/^\uFEFF/, '');
  let value: unknown;
  try {
    value = JSON.parse(bare);
  } catch {
    return refuse(syntaxProblem(bare));
  }
  const problems = keyProblems(bare);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value };
}
