import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FoundDraft, PegDraft } from '../../../src/client/round/draft.ts';
import { applyPatch, patchBetween, patchesJoined } from '../../../src/client/round/draft-patch.ts';
import { emptyDraft } from './example-draft.ts';

const known = { kind: 'rats', place: 'bank', foundOn: '2026-01-01', severity: 2, likelihood: 2 } as const;
const found = (id: string, place: string): FoundDraft => ({
  id,
  kind: 'trip',
  place,
  action: '',
  severity: '',
  likelihood: '',
});

const drafts: fc.Arbitrary<PegDraft> = fc
  .record({
    note: fc.option(fc.constantFrom('a', 'b')),
    status: fc.option(fc.constantFrom('open', 'closed')),
    did: fc.constantFrom('', 'checked', 'cleared' as const),
    found: fc.uniqueArray(fc.constantFrom('f1', 'f2', 'f3')),
    place: fc.constantFrom('step', 'path'),
    at: fc.option(fc.constantFrom({ lat: 52, lng: 0, accuracyMetres: 8 })),
    seen: fc.boolean(),
    seenOn: fc.option(fc.constantFrom('2026-11-12', '2026-11-13')),
  })
  .map(({ note, status, did, found: ids, place, at, seen, seenOn }) =>
    emptyDraft('1', {
      fields: { ...(note === null ? {} : { note }), ...(status === null ? {} : { status }) },
      lookedAt: [{ ...known, did: did as '' }],
      found: [...ids].sort().map((id) => found(id, place)),
      ...(at === null ? {} : { at }),
      ...(seenOn === null ? {} : { seenOn }),
      seen,
    }),
  );

/** The order in which hazards were added says nothing. */
const sorted = (draft: PegDraft) => ({ ...draft, found: draft.found.toSorted((a, b) => a.id.localeCompare(b.id)) });

describe('a patch of a draft', () => {
  it('leads from one draft to the other, and its inverse back: every entry can be undone', () => {
    fc.assert(
      fc.property(drafts, drafts, (before, after) => {
        expect(sorted(applyPatch(before, patchBetween(before, after)))).toEqual(after);
        expect(sorted(applyPatch(after, patchBetween(after, before)))).toEqual(before);
      }),
    );
  });

  it('does the same joined as one after the other', () => {
    fc.assert(
      fc.property(drafts, drafts, drafts, (a, b, c) => {
        const [first, second] = [patchBetween(a, b), patchBetween(b, c)];
        expect(sorted(applyPatch(a, patchesJoined(first, second)))).toEqual(c);
      }),
    );
  });

  it('keeps what two tabs noted of different things, in either order', () => {
    const base = emptyDraft('1', { seen: false, lookedAt: [{ ...known, did: '' }] });
    const one = patchBetween(base, { ...base, fields: { status: 'closed', reason: 'slip' }, seen: true });
    const other = patchBetween(base, {
      ...base,
      lookedAt: [{ ...known, did: 'checked' }],
      found: [found('f1', 'step')],
    });
    expect(applyPatch(applyPatch(base, one), other)).toEqual(applyPatch(applyPatch(base, other), one));
    expect(applyPatch(applyPatch(base, one), other)).toMatchObject({
      fields: { status: 'closed', reason: 'slip' },
      lookedAt: [{ did: 'checked' }],
      found: [{ id: 'f1' }],
      seen: true,
    });
  });
});
