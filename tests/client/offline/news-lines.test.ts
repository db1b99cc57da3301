import { describe, expect, it } from 'vitest';
import { newsLines } from '../../../src/client/offline/news-lines.ts';
import type { NowFile, NowNotice } from '../../../src/domain/now-file.ts';
import type { PegFacts } from '../../../src/domain/peg-verdict.ts';

const TODAY = '2026-11-24';
const now = (
  day: string,
  notices: readonly NowNotice[] = [],
  pegs: Readonly<Record<string, PegFacts>> = {},
): NowFile => ({
  edition: `edition of ${day}`,
  day,
  pegs,
  notices,
  marks: {},
});
const OLD = now('2026-11-21');
const BOARDS: NowNotice = { id: 'boards', title: 'Boards off', kind: 'hazard', from: '2026-11-22', pegs: ['pool/2'] };
const WORKS: NowNotice = {
  id: 'works',
  title: 'Tree work',
  kind: 'works',
  from: '2026-11-23',
  until: '2026-11-30',
  waters: ['pool'],
};
const ICE: NowNotice = { id: 'ice', title: 'Thin ice', kind: 'hazard', from: '2026-11-20' };
const LIMITED: PegFacts = { status: 'open', standOffMetres: 30, limits: { poleMetres: 11, castMetres: 0 } };

const told = (path: string, newest: NowFile, own: NowFile | null = OLD, today = TODAY) =>
  newsLines({ path, seen: own === null ? [newest] : [own, newest], own }, today).map(
    ({ strong, words }) => `${strong}. ${words}`,
  );

describe('what an older page is told by the newest edition', () => {
  const newest = now('2026-11-23', [BOARDS, WORKS, ICE], { 'pool/3': LIMITED });

  it('is the notices that concern its peg, in words', () => {
    expect(told('pool/2/', newest)).toEqual([
      'Hazard notice. Boards off (from 22 Nov 2026). Pegs: pool 2.',
      'Notice of works. Tree work (23 Nov 2026 to 30 Nov 2026).',
      'Hazard notice. Thin ice (from 20 Nov 2026).',
    ]);
    expect(told('pool/1/', newest)).toHaveLength(2);
    expect(told('other/1/', newest)).toEqual(['Hazard notice. Thin ice (from 20 Nov 2026).']);
  });

  it('is the limits of its peg', () => {
    expect(told('pool/3/', newest)[0]).toBe('Limited. pole to 11 m, no casting.');
  });

  it('is those of its water, and on a page of no water all', () => {
    expect(told('pool/', newest)).toHaveLength(3);
    expect(told('', newest)).toHaveLength(3);
    expect(told('rules/', newest)).toHaveLength(3);
  });

  it('is nothing that the page says itself, nor what is over, has not begun, was replaced, or is no more than news', () => {
    expect(told('pool/3/', newest, now('2026-11-21', [ICE, WORKS], { 'pool/3': LIMITED }))).toEqual([]);
    expect(told('pool/1/', newest, OLD, '2026-12-24')).toEqual(['Hazard notice. Thin ice (from 20 Nov 2026).']);
    expect(told('pool/1/', now('2026-11-23', [{ ...ICE, from: '2026-12-01' }]))).toEqual([]);
    expect(told('pool/1/', now('2026-11-23', [{ ...ICE, replacedFrom: '2026-11-23' }]))).toEqual([]);
    expect(told('pool/1/', now('2026-11-23', [{ ...ICE, kind: 'news' }]))).toEqual([]);
  });

  it('is told again where a notice changed', () => {
    expect(
      told('pool/1/', now('2026-11-23', [{ ...ICE, title: 'Thin ice, thawing' }]), now('2026-11-21', [ICE])),
    ).toHaveLength(1);
  });

  it('is nothing on a page of the newest edition', () => {
    expect(told('pool/2/', newest, newest)).toEqual([]);
  });

  it('is all of it where the page is of no edition that is known, and no more than fits', () => {
    expect(told('pool/3/', newest, null)).toHaveLength(3);
    const many = Array.from({ length: 9 }, (_, i) => ({ ...ICE, id: String(i) }));
    expect(told('', now('2026-11-23', many)).at(-1)).toBe('5 more notices. They stand on the club’s notices page.');
  });
});
