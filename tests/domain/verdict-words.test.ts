import { describe, expect, it } from 'vitest';
import { closingWords } from '../../src/content/intake/close-pegs.ts';
import type { ClosingHazard, PegFacts } from '../../src/domain/peg-verdict.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { closedReason } from '../../src/domain/verdict-words.ts';

const ICE: ClosingHazard = {
  kind: 'thin-ice',
  name: 'Ice',
  place: 'along the reeds',
  foundOn: '2026-11-12',
  why: { rule: 'hard-rule' },
};
const reasonOf = (facts: Partial<PegFacts>) => {
  const verdict = pegVerdict({ status: 'closed', standOffMetres: 30, ...facts }, '2026-11-21');
  if (verdict.state !== 'closed') throw new Error('the peg is open');
  return closedReason(verdict);
};
const hazards = [
  { did: 'found' as const, kind: 'thin-ice', place: 'along the reeds', severity: 4, likelihood: 4 } as const,
];

describe('why a peg is closed', () => {
  it('is told once where the record says in its reason what an intake closed it for', () => {
    const both = { unsafePlatform: 'unsafe: a post is gone', hazards: [ICE] };
    const platform = 'the platform must not be used (unsafe: a post is gone)';
    const reason = closingWords({ platform: 'unsafe: a post is gone', hazards })!;
    expect(reasonOf({ reason, ...both })).toBe(`${platform}; Ice, along the reeds`);
    expect(reasonOf({ reason: closingWords({ hazards })!, hazards: [ICE] })).toBe('Ice, along the reeds');
  });

  it('keeps the record’s reason where it says more, or where what it tells of has been dealt with since', () => {
    const own = 'The platform is unsafe: do not use it, and the rail is down';
    expect(reasonOf({ reason: own, unsafePlatform: 'unsafe' })).toBe(`${own}; the platform must not be used (unsafe)`);
    const reason = closingWords({ platform: 'unsafe', hazards })!;
    expect(reasonOf({ reason, hazards: [ICE] })).toBe(`${reason.slice(0, -1)}; Ice, along the reeds`);
    expect(reasonOf({ reason })).toBe(reason);
    expect(reasonOf({})).toBe('no reason is on record');
  });

  it('names each of two notices of one title once', () => {
    const closures = ['a', 'b'].map((notice) => ({ notice, title: 'Tree work', from: '2026-11-20' as const }));
    expect(reasonOf({ status: 'open', closures })).toBe('Tree work');
  });
});
