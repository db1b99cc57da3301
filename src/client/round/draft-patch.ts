import type { Day } from '../../domain/day.ts';
import type { FoundDraft, LookedAtDraft, PegDraft, PegField } from './draft.ts';

/**
 * What one entry changes of a draft: the fields it touched, and nothing else. Two tabs that note different things of one peg
 * write different patches, so that neither takes the other's away. Null takes a thing out.
 */
export interface DraftPatch {
  readonly fields?: Readonly<Partial<Record<PegField, string | null>>>;
  readonly days?: Readonly<Partial<Record<PegField | 'at', Day | null>>>;
  readonly lookedAt?: Readonly<Record<string, LookedAtDraft>>;
  readonly found?: Readonly<Record<string, FoundDraft | null>>;
  readonly at?: PegDraft['at'] | null;
  readonly seen?: boolean;
  readonly seenOn?: Day | null;
}

/** What leads from one draft of a peg to another: the inverse of an entry is the patch the other way round. */
export function patchBetween(before: PegDraft, after: PegDraft): DraftPatch {
  const fields = changedKeys(before.fields, after.fields);
  const days = changedKeys(before.days ?? {}, after.days ?? {});
  const lookedAt = changedItems(before.lookedAt, after.lookedAt, hazardId);
  const found = changedItems(before.found, after.found, ({ id }) => id);
  return {
    ...(isEmpty(fields) ? {} : { fields }),
    ...(isEmpty(days) ? {} : { days }),
    // What the guide says of a peg does not change while a round is walked: none is ever taken out.
    ...(isEmpty(lookedAt) ? {} : { lookedAt: lookedAt as Record<string, LookedAtDraft> }),
    ...(isEmpty(found) ? {} : { found }),
    ...(same(before.at, after.at) ? {} : { at: after.at ?? null }),
    ...(before.seen === after.seen ? {} : { seen: after.seen }),
    ...(before.seenOn === after.seenOn ? {} : { seenOn: after.seenOn ?? null }),
  };
}

/** The draft with what a patch changes. */
export function applyPatch(draft: PegDraft, patch: DraftPatch): PegDraft {
  const { at: _at, seenOn: _on, days: _days, ...rest } = draft;
  const at = patch.at === undefined ? draft.at : patch.at;
  const seenOn = patch.seenOn === undefined ? draft.seenOn : patch.seenOn;
  const days = withKeys(draft.days ?? {}, patch.days ?? {});
  const found = patch.found ?? {};
  const lookedAt = patch.lookedAt ?? {};
  return {
    ...rest,
    fields: withKeys(draft.fields, patch.fields ?? {}),
    ...(isEmpty(days) ? {} : { days }),
    lookedAt: draft.lookedAt.map((hazard) => lookedAt[hazardId(hazard)] ?? hazard),
    found: [
      ...draft.found.filter(({ id }) => found[id] !== null).map((hazard) => found[hazard.id] ?? hazard),
      ...Object.values(found).filter((hazard) => hazard !== null && !draft.found.some(({ id }) => id === hazard.id)),
    ] as FoundDraft[],
    ...(at === undefined || at === null ? {} : { at }),
    ...(seenOn === undefined || seenOn === null ? {} : { seenOn }),
    seen: patch.seen ?? draft.seen,
  };
}

/** One patch that does what two do one after the other. */
export function patchesJoined(first: DraftPatch, second: DraftPatch): DraftPatch {
  const joined = <K extends 'fields' | 'days' | 'lookedAt' | 'found'>(key: K) =>
    first[key] === undefined && second[key] === undefined ? {} : { [key]: { ...first[key], ...second[key] } };
  return { ...first, ...second, ...joined('fields'), ...joined('days'), ...joined('lookedAt'), ...joined('found') };
}

/** Tells the guide's hazards of one peg apart. */
export function hazardId({ kind, place, foundOn }: Pick<LookedAtDraft, 'kind' | 'place' | 'foundOn'>): string {
  return JSON.stringify([kind, place, foundOn]);
}

function changedKeys<T extends Readonly<Record<string, string | undefined>>>(before: T, after: T) {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return Object.fromEntries(
    [...keys].filter((key) => before[key] !== after[key]).map((key) => [key, after[key] ?? null]),
  );
}

function withKeys(before: Readonly<Record<string, string>>, change: Readonly<Record<string, string | null>>) {
  return Object.fromEntries(Object.entries({ ...before, ...change }).filter(([, value]) => value !== null)) as Record<
    string,
    string
  >;
}

function changedItems<T>(before: readonly T[], after: readonly T[], idOf: (item: T) => string) {
  const was = new Map(before.map((item) => [idOf(item), item]));
  const is = new Map(after.map((item) => [idOf(item), item]));
  const ids = new Set([...was.keys(), ...is.keys()]);
  return Object.fromEntries(
    [...ids].filter((id) => !same(was.get(id), is.get(id))).map((id) => [id, is.get(id) ?? null]),
  );
}

function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function isEmpty(object: object): boolean {
  return Object.keys(object).length === 0;
}
