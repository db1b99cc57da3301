import { visibleLine } from '../domain/hidden-characters.ts';
import type { Fault, LeftOut } from './fault.ts';

/** Faults alike (same file, rule and field) after these are counted, not told one by one. */
const TOLD_ALIKE = 5;

/** The sentence of one fault: where, what was found, what was expected, what to do, and the rule's word. */
export function formatFault(fault: Fault): string {
  const { file, line, column, field, rule, found, expected, mend, severity, sentence } = fault;
  const place = isFile(fault) ? `${file}:${line}:${column}` : file || 'the folder';
  const of = field !== '' && isValue(found) ? ` for ${field}` : '';
  const wrong = sentence ?? `${opening(found)}${of}, expected ${expected}.`;
  return visibleLine(`${place} ${severity} ${wrong} ${mend} (${rule})`);
}

/** Faults of a whole folder stand at no line. */
function isFile({ rule, file }: Fault): boolean {
  return file !== '' && !rule.startsWith('folder-') && !rule.startsWith('intake-');
}

/** Whether what was found is the value of a field, not a sentence's worth of things. */
function isValue(found: string): boolean {
  return found === 'nothing' || /^"/.test(found) || /^\S+$/.test(found);
}

/** "Unexpected place in the water", "Found no such file". */
function opening(found: string): string {
  if (/^no(?:thing)?\b/.test(found)) return `Found ${found}`;
  return `Unexpected ${found.replace(/^(?:an?|the) /, '')}`;
}

/** All faults of a run as lines: those alike told five times, then counted; the sum at the end. Empty where there are none. */
export function formatFaults(faults: readonly Fault[]): readonly string[] {
  if (faults.length === 0) return [];
  const told = new Map<string, number>();
  const lines: string[] = [];
  const groupOf = ({ file, rule, field }: Fault) => `${file}\n${rule}\n${field}`;
  const sizes = Map.groupBy(faults, groupOf);
  for (const fault of faults) {
    const group = groupOf(fault);
    const count = (told.get(group) ?? 0) + 1;
    told.set(group, count);
    if (count <= TOLD_ALIKE) lines.push(formatFault(fault));
    if (count === TOLD_ALIKE) {
      const more = (sizes.get(group)?.length ?? count) - TOLD_ALIKE;
      if (more > 0) lines.push(visibleLine(`${fault.file} … and ${more} more like it (${fault.rule})`));
    }
  }
  const errors = faults.filter(({ severity }) => severity === 'error').length;
  return [...lines, summary(errors, faults.length - errors)];
}

/** What was left out, one line each. */
export function formatLeftOut(leftOut: readonly LeftOut[]): readonly string[] {
  if (leftOut.length === 0) return [];
  const groupOf = ({ file, what }: LeftOut) => `${file.slice(0, file.lastIndexOf('/') + 1)}\n${what}`;
  const lines = [...Map.groupBy(leftOut, groupOf).values()].flatMap((alike) => {
    const told = alike
      .slice(0, TOLD_ALIKE)
      .map(({ file, line, what, why }) => visibleLine(`${file}:${line} left out: ${what}. ${why}`));
    const more = alike.length - told.length;
    return more > 0 ? [...told, visibleLine(`${alike[0]!.file} … and ${more} more like it left out`)] : told;
  });
  return [...lines, `${counted(leftOut.length, 'thing')} left out.`];
}

function summary(errors: number, warnings: number): string {
  const parts = [errors === 0 ? '' : counted(errors, 'error'), warnings === 0 ? '' : counted(warnings, 'warning')];
  return `${parts.filter((part) => part !== '').join(' and ')}.`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
