import type { Day } from '../../domain/day.ts';
import type { Content } from '../content.ts';
import type { Asker, Question } from '../papers/questions.ts';
import { anglerName } from './angler-name.ts';
import { keyedDigest, newReference, type RegisterRow, registerRow, resolveAngler } from './register.ts';

/** What the log says of a reference: how doubts are described, since no name is kept. */
export interface AnglerLog {
  readonly sessions: number;
  readonly last: Day;
  readonly waters: readonly string[];
}

/** The references of the names on some papers, and the register that goes with them. */
export interface Assigned {
  /** By name as written; a name without a letter in it has none. */
  readonly references: ReadonlyMap<string, string>;
  readonly rows: readonly RegisterRow[];
  readonly added: number;
  /** Spellings that were new for somebody known: how many, by reason. */
  readonly respelt: ReadonlyMap<string, number>;
}

/** A name as written, and the match it stands in: two names of one match are two people. */
export interface WrittenName {
  readonly text: string;
  readonly match: string;
}

/** What the log says of every reference. */
export function anglerLogs({ events, sessions }: Pick<Content, 'events' | 'sessions'>): ReadonlyMap<string, AnglerLog> {
  const days = new Map(events.map(({ value }) => [value.id, value.day]));
  const logs = new Map<string, AnglerLog>();
  for (const {
    value: { angler, event, water },
  } of sessions) {
    const day = days.get(event);
    if (angler === undefined || day === undefined) continue;
    const known = logs.get(angler);
    logs.set(angler, {
      sessions: (known?.sessions ?? 0) + 1,
      last: known === undefined || day > known.last ? day : known.last,
      waters: [...new Set([...(known?.waters ?? []), water])],
    });
  }
  return logs;
}

/**
 * Gives each name on the papers its reference. Longer spellings first, so that `P Pask` finds the `Peter Pask` of the
 * same sheet. A doubt is asked by describing what the log knows of each it may be.
 * @param draw gives eight random bytes; within one run the same for the same text
 */
export function assignReferences(
  names: readonly WrittenName[],
  key: Uint8Array,
  register: readonly RegisterRow[],
  logs: ReadonlyMap<string, AnglerLog>,
  draw: (salt: string) => Uint8Array,
  asker: Asker,
): Assigned {
  const references = new Map<string, string>();
  const respelt = new Map<string, number>();
  const rows = [...register];
  let added = 0;
  const kept = new Set(register.map(({ ref }) => ref));
  /** Somebody met on these papers first has no reference that lasts yet: the digest of the name stands for them. */
  const choiceOf = (ref: string): Choice => ({
    value: kept.has(ref) ? ref : (rows.find((row) => row.ref === ref)?.full ?? ref),
    words: logWords(logs.get(ref)),
  });
  const matchesOf = new Map<string, Set<string>>();
  for (const { text, match } of names) matchesOf.set(text, (matchesOf.get(text) ?? new Set()).add(match));
  const written = [...matchesOf.keys()].flatMap((text) => {
    const name = anglerName(text);
    return name === null ? [] : [{ text, name }];
  });
  const byFullness = written.sort(
    (a, b) => b.name.full.length - a.name.full.length || (a.name.full < b.name.full ? -1 : 1),
  );
  const fished = new Map<string, Set<string>>();
  for (const { text, name } of byFullness) {
    const matches = matchesOf.get(text)!;
    const isThere = (ref: string): boolean => [...matches].some((match) => fished.get(ref)?.has(match) === true);
    const digest = keyedDigest(key, 'full', name.full);
    const resolved = resolveAngler(key, rows, name);
    const candidates = (resolved.kind === 'doubt' ? resolved.candidates : []).filter((one) => !isThere(one));
    let ref: string | null = null;
    if (resolved.kind === 'known' && (resolved.because === null || !isThere(resolved.ref))) {
      ref = resolved.ref;
      if (resolved.because !== null) respelt.set(resolved.because, (respelt.get(resolved.because) ?? 0) + 1);
    } else if (candidates.length > 0 && resolved.kind === 'doubt') {
      const answer = asker.ask(doubt(digest, text, candidates.map(choiceOf), resolved.because));
      if (answer === null) continue;
      ref = answer === 'new' ? null : (candidates.find((one) => choiceOf(one).value === answer) ?? null);
    }
    if (ref === null) {
      const taken = new Set([...rows.map((row) => row.ref), ...logs.keys()]);
      ref = newReference((attempt) => draw(`${digest}/${attempt}`), taken);
      added += 1;
    }
    fished.set(ref, new Set([...(fished.get(ref) ?? []), ...matches]));
    const row = registerRow(key, ref, name);
    if (!rows.some((known) => known.ref === row.ref && known.full === row.full)) rows.push(row);
    references.set(text, ref);
  }
  return { references, rows, added, respelt };
}

interface Choice {
  readonly value: string;
  readonly words: string;
}

/** The answer is kept outside the folder, and by digest: no name is written anywhere. */
function doubt(digest: string, written: string, candidates: readonly Choice[], because: string): Question {
  return {
    scope: 'anglers',
    of: digest,
    key: 'who',
    ask: `Who is "${written}"?`,
    evidence: [because],
    choices: [...candidates, { value: 'new', words: 'somebody new' }],
  };
}

function logWords(log: AnglerLog | undefined): string {
  if (log === undefined) return 'somebody on these papers, not in the log yet';
  const times = log.sessions === 1 ? 'once' : `${log.sessions} times`;
  return `the person who fished ${times}, last on ${log.last}, on ${log.waters.join(', ')}`;
}
