import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  type Pair,
  parseDocument,
  visit,
  type YAMLMap,
} from 'yaml';
import type { Fault } from '../fault.ts';
import { strayParts } from './flow-commas.ts';
import { hiddenCharacterIn, hiddenCharacterRule } from './plain-text.ts';
import { type FieldPath, faultOfFile, type Source } from './source.ts';
import { shown, type TextPlace } from './text-place.ts';
import { unclosedBefore } from './unclosed-bracket.ts';
import { yamlFault } from './yaml-fault.ts';
import { keyText } from './yaml-key.ts';

/** YAML as plain values in which every scalar is the text that was written, with the places of all of them. */
export interface YamlSource extends Source {
  /** Maps as objects without a prototype, lists as arrays, scalars as strings. Empty values are left out. */
  readonly value: unknown;
}

interface YamlRead {
  /** Null where nothing can be read. */
  readonly source: YamlSource | null;
  readonly faults: readonly Fault[];
}

/**
 * Reads YAML 1.2 by the failsafe schema: `peg: 014`, `on` and `0800 80 70 60` stay what was written, and each field's
 * own reader decides what it means. Anchors and aliases are refused: they hide what a record says, and can unfold to more
 * than any memory holds. Never throws.
 * @param firstLine the line of the file on which `text` begins
 */
export function readYaml(file: string, text: string, firstLine: number): YamlRead {
  const lines = new LineCounter();
  const at = (offset: number): TextPlace => {
    const { line, col } = lines.linePos(offset);
    return { line: line + firstLine - 1, column: Math.max(1, col) };
  };
  // The parser calls itself for every level; some thousands of brackets exhaust it.
  const tooDeep = () => yamlFault(file, 'TOO_DEEP', { line: firstLine, column: 1 }, 'too many levels of fields');
  // Not `silent`: that would also hide that the text goes on after a line of `...`, and drop the rest unseen.
  const options = { schema: 'failsafe', lineCounter: lines, logLevel: 'error', prettyErrors: false } as const;
  let document: Document.Parsed;
  try {
    document = parseDocument(text, options);
  } catch {
    return { source: null, faults: [tooDeep()] };
  }
  const problems = [...document.errors, ...document.warnings];
  if (problems.some(({ message }) => message.includes('call stack'))) return { source: null, faults: [tooDeep()] };
  const faults = withoutEchoes(
    problems.map((problem) => {
      const { code, message } = problem;
      const isUnclosed = /^Flow (?:map|sequence) |^Missing closing/.test(message);
      // The parser notices at the next line; the bracket or quote stands where it was opened.
      const offset = (isUnclosed ? unclosedBefore(text, problem.pos[0]) : null) ?? problem.pos[0];
      const shownLine = shown(lineAt(text, offset));
      return yamlFault(file, isUnclosed ? 'MISSING_CHAR' : code, at(offset), shownLine, message);
    }),
  );
  const shared = sharedNode(document);
  if (shared !== null) faults.push(yamlFault(file, 'SHARED', at(shared), shown(lineAt(text, shared))));
  for (const { offset, field, fault } of strayParts(text, document.contents)) {
    faults.push({ file, ...at(offset), field, severity: 'error', ...fault });
  }
  const isReadable = shared === null && problems.every(({ code }) => code === 'DUPLICATE_KEY');
  if (!isReadable) return { source: null, faults };
  faults.push(...hiddenCharacterFaults(file, document, at));
  const places = placesIn(file, text, document, at, firstLine);
  return { source: { ...places, value: plainValue(document.contents) }, faults };
}

/** One slip makes the parser stumble again and again behind it: the first of each line is told, and no more than three. */
function withoutEchoes(faults: readonly Fault[]): Fault[] {
  const met = new Set<number>();
  const firstOfLine = faults.filter(({ line }) => !met.has(line) && met.add(line));
  const duplicates = firstOfLine.filter(({ rule }) => rule === 'field-duplicate');
  return [...duplicates, ...firstOfLine.filter(({ rule }) => rule !== 'field-duplicate').slice(0, 3)];
}

function placesIn(
  file: string,
  text: string,
  document: Document.Parsed,
  at: (offset: number) => TextPlace,
  firstLine: number,
): Source {
  const start: TextPlace = { line: firstLine, column: 1 };
  const nodeAt = (path: FieldPath) => path.reduce(stepInto, document.contents as unknown);
  const placeOf = (path: FieldPath): TextPlace => {
    const node = nodeAt(path);
    if (isNode(node) && node.range != null && !(isScalar(node) && node.range[0] === node.range[1]))
      return at(node.range[0]);
    return path.length === 0 ? start : nameplaceOf(path);
  };
  const nameplaceOf = (path: FieldPath): TextPlace => {
    const key = pairOf(nodeAt(path.slice(0, -1)), path.at(-1))?.key;
    if (isScalar(key) && key.range != null) return at(key.range[0]);
    return path.length === 0 ? start : placeOf(path.slice(0, -1));
  };
  const writtenAt = (path: FieldPath): string | undefined => {
    const node = nodeAt(path);
    if (!isNode(node) || node.range == null) return undefined;
    if (isScalar(node)) return String(node.value ?? '');
    return text.slice(node.range[0], node.range[1]);
  };
  return { file, placeOf, nameplaceOf, writtenAt };
}

function plainValue(node: unknown): unknown {
  if (isMap(node)) {
    const value: Record<string, unknown> = Object.create(null);
    for (const pair of node.items) {
      const inner = plainValue(pair.value);
      if (inner !== undefined) value[keyText(pair)] = inner;
    }
    return value;
  }
  if (isSeq(node)) return node.items.map((item) => plainValue(item) ?? '');
  if (isScalar(node)) return node.value === null || node.value === '' ? undefined : String(node.value);
  return undefined;
}

function stepInto(node: unknown, step: PropertyKey): unknown {
  if (isSeq(node)) return typeof step === 'number' ? node.items[step] : undefined;
  return pairOf(node, step)?.value;
}

function pairOf(node: unknown, key: PropertyKey | undefined): Pair | undefined {
  if (!isMap(node)) return undefined;
  return (node as YAMLMap).items.find((pair) => keyText(pair) === key);
}

/** Offset of the first anchor or alias. */
function sharedNode(document: Document.Parsed): number | null {
  let offset: number | null = null;
  visit(document, {
    Node: (_, node) => {
      const isShared = isAlias(node) || ((isScalar(node) || isCollection(node)) && node.anchor !== undefined);
      if (!isShared) return undefined;
      offset = node.range?.[0] ?? 0;
      return visit.BREAK;
    },
    Pair: (_, pair) => (isPair(pair) ? undefined : visit.SKIP),
  });
  return offset;
}

/** Escapes in double quotes can write characters that are not seen in the file. */
function hiddenCharacterFaults(file: string, document: Document.Parsed, at: (offset: number) => TextPlace): Fault[] {
  const faults: Fault[] = [];
  visit(document, {
    Scalar: (_, node) => {
      const code = hiddenCharacterIn(String(node.value ?? ''));
      if (code !== null) faults.push(faultOfFile(file, hiddenCharacterRule(code), at(node.range?.[0] ?? 0)));
    },
  });
  return faults;
}

function lineAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', Math.max(0, offset - 1)) + 1;
  const end = text.indexOf('\n', start);
  return text.slice(start, end === -1 ? text.length : end);
}
