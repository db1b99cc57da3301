import { describe, expect, it } from 'vitest';
import { closedUnseen, closedUnseenWords, nowOfGuide } from '../../../src/commands/guide-folder/closed-unseen.ts';
import type { NowFile } from '../../../src/domain/now-file.ts';

const guide = (day: string, ...closed: string[]): NowFile => ({
  edition: `${day}${closed.join('')}`,
  day,
  pegs: Object.fromEntries(closed.map((peg) => [peg, { status: 'closed', standOffMetres: 30 }])),
  notices: [],
  marks: {},
});

describe('two guides of one day', () => {
  it('are told of where the later one closes a peg', () => {
    const unseen = closedUnseen(guide('2026-11-21', 'mill-pond/1'), guide('2026-11-21', 'mill-pond/1', 'mill-pond/2'));
    expect(unseen).toEqual({ day: '2026-11-21', pegs: ['mill-pond/2'] });
    expect(closedUnseenWords(unseen!)).toContain('closes mill-pond/2');
  });

  it('are told of where the day went back', () => {
    expect(closedUnseen(guide('2026-11-22'), guide('2026-11-21', 'mill-pond/2'))?.pegs).toEqual(['mill-pond/2']);
  });

  it('are no matter where the day moved on, nothing closed, or there is one guide', () => {
    expect(closedUnseen(guide('2026-11-21'), guide('2026-11-22', 'mill-pond/2'))).toBeNull();
    expect(closedUnseen(guide('2026-11-21', 'mill-pond/2'), guide('2026-11-21'))).toBeNull();
    expect(closedUnseen(null, guide('2026-11-21', 'mill-pond/2'))).toBeNull();
  });

  it('names a few of many pegs', () => {
    const many = Array.from({ length: 9 }, (_, i) => `mill-pond/${i}`);
    expect(closedUnseenWords({ day: '2026-11-21', pegs: many })).toContain('mill-pond/4 and 4 more');
  });

  it('takes a folder without a guide for none', async () => {
    expect(await nowOfGuide('/nowhere/at/all')).toBeNull();
  });
});
