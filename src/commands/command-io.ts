import { createInterface } from 'node:readline/promises';
import { localDay } from '../client/local-day.ts';
import type { Day } from '../domain/day.ts';
import { visibleLines } from '../domain/hidden-characters.ts';

/** What a command may touch of the world outside: passed in, so that a test can stand in for a terminal. */
export interface CommandIo {
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** One line for standard output. */
  readonly print: (line: string) => void;
  /** One line for standard error: faults, progress, questions. */
  readonly printError: (line: string) => void;
  /** Shows how far a step is, in place of what was shown before; missing where standard error is no terminal. */
  readonly showProgress?: (line: string) => void;
  /** The day on this computer's clock, for warnings alone; missing where none should be looked at. */
  readonly today?: () => Day;
  /** Whether a person sits at it: progress and questions only then. */
  readonly isTerminal: boolean;
  /** Asks a question and waits for the answer; missing where nobody can be asked. */
  readonly ask?: (question: string) => Promise<string>;
  /** Questions with choices and with answers that are held against what they must be; missing where `ask` is. */
  readonly prompts?: Prompts;
}

/** Questions a person answers at a terminal; null where they would rather not. */
export interface Prompts {
  readonly text: (question: {
    readonly message: string;
    readonly suggested?: string;
    /** What is wrong with an answer, null where nothing is. */
    readonly fault: (answer: string) => string | null;
  }) => Promise<string | null>;
  readonly choose: (question: {
    readonly message: string;
    readonly choices: readonly { readonly value: string; readonly words: string }[];
    readonly suggested?: string;
  }) => Promise<string | null>;
}

/** Exit codes of every command: done; faults in the folder, papers or disk; wrong usage; a fault of the program's own. */
export const EXIT = { clean: 0, faults: 1, usage: 2, program: 3 } as const;

/** A command: reads its arguments, calls a room, prints, and returns the exit code. */
export type RunCommand = (args: readonly string[], io: CommandIo) => Promise<number>;

/** Back to the start of the line, and the line emptied (ECMA-48: CR, EL 2). */
const CLEAR_LINE = '\r\u001b[2K';

/** The process as a command sees it. */
export function processIo(): CommandIo {
  const isTerminal = process.stdin.isTTY === true && process.stderr.isTTY === true;
  let isShowing = false;
  const clear = () => {
    if (isShowing) process.stderr.write(CLEAR_LINE);
    isShowing = false;
  };
  const showProgress = (line: string) => {
    process.stderr.write(`${CLEAR_LINE}${visibleLines(line).slice(0, (process.stderr.columns ?? 80) - 1)}`);
    isShowing = true;
  };
  // What a file holds must not command the terminal that shows it.
  const write = (stream: NodeJS.WriteStream) => (line: string) => {
    clear();
    stream.write(`${visibleLines(line)}\n`);
  };
  return {
    environment: process.env,
    print: write(process.stdout),
    printError: write(process.stderr),
    ...(process.stderr.isTTY === true && process.env.TERM !== 'dumb' ? { showProgress } : {}),
    today: () => localDay(new Date()),
    isTerminal,
    ...(isTerminal ? { ask, prompts: LATER } : {}),
  };
}

/** Asks on standard error, so that what a command prints can be piped. An end of input counts as an empty answer. */
async function ask(question: string): Promise<string> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  try {
    const closed = new Promise<string>((resolve) => lines.once('close', () => resolve('')));
    return await Promise.race([lines.question(question), closed]);
  } finally {
    lines.close();
  }
}

/** The library of prompts, loaded at the first question. */
const LATER: Prompts = {
  text: async (question) => (await import('./terminal-prompts.ts')).TERMINAL_PROMPTS.text(question),
  choose: async (question) => (await import('./terminal-prompts.ts')).TERMINAL_PROMPTS.choose(question),
};
