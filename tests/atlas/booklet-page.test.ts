import { describe, expect, it } from 'vitest';
import { bookletPage } from '../../src/atlas/booklet-page.ts';
import type { Notice } from '../../src/domain/notice.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const [water] = exampleVenue().waters;
const found = {
  severity: 3,
  likelihood: 2,
  foundOn: '2025-03-09',
  checkedOn: '2026-11-01',
  place: 'the bank',
} as const;
const settings = {
  ...EXAMPLE_SETTINGS,
  guideDay: '2026-11-21',
  features: [
    { id: 'reeds', name: 'Reeds' },
    { id: 'corner', name: 'Corner' },
    { id: 'island', name: 'Island' },
  ],
};
const page = bookletPage(
  exampleAtlas({
    venue: {
      settings,
      pegs: [
        examplePeg('1', { features: ['reeds'], hazards: [{ kind: 'steep-bank', ...found }] }),
        examplePeg('2', { features: ['corner', 'reeds'], status: 'closed', statusReason: 'The boards have gone' }),
        examplePeg('10', { features: [], hazards: [{ kind: 'slippery', ...found, clearedOn: '2026-10-01' }] }),
      ],
      waters: [{ ...water!, hazards: [{ kind: 'deep-silt', ...found }] }],
    },
  }),
);
/** "Reeds: 1, 2 closed" */
const written = (title: string) =>
  page.index
    .find((part) => part.title === title)!
    .entries.map(
      ({ name, waters }) =>
        `${name}: ${waters
          .flatMap(({ pegs }) => pegs.map(({ peg, standing }) => (standing.closed === null ? peg : `${peg} closed`)))
          .join(', ')}`,
    );

describe('the index of the booklet', () => {
  it('has every peg in the order of the bank, and features that some peg has in that of the alphabet', () => {
    expect(written('Pegs')).toEqual([`${water!.name}: 1, 2 closed, 10`]);
    expect(written('Features')).toEqual(['Corner: 2 closed', 'Reeds: 1, 2 closed']);
  });

  it('has current hazards alone, also those of the water as a whole', () => {
    expect(written('Hazards')).toEqual(['Deep silt: ', 'Steep bank: 1']);
  });
});

describe('the booklet', () => {
  it('has safety before all else and the sheets behind their water', () => {
    expect(page.parts.map(({ href, sheets }) => [href, sheets.map(({ peg }) => peg)])).toEqual([
      ['/safety/', []],
      ['/notices/', []],
      [`/${water!.id}/`, ['1', '2', '10']],
      ['/features/', []],
      ['/rules/', []],
    ]);
  });

  it('says what is closed on its day, and the stand-off that closes', () => {
    expect(page.dataTo).toBe('21 Nov 2026');
    expect(page.closed.map(({ pegs, standing }) => [pegs.map(({ peg }) => peg), standing.closed?.reason])).toEqual([
      [['2'], 'The boards have gone'],
    ]);
    expect(page.closers.join(' ')).toContain(`nearer than ${settings.standOff.metres} m`);
  });

  it('names closures that begin or end behind its back, not those without an end', () => {
    const closure = (id: string, days: Partial<Notice>): Notice => ({
      id,
      title: id,
      kind: 'closure',
      from: '2026-11-01',
      waters: [],
      pegs: [],
      markdown: '',
      ...days,
    });
    const { dated } = bookletPage(
      exampleAtlas({
        venue: {
          settings,
          notices: [
            closure('ends', { until: '2026-12-05' }),
            closure('open', {}),
            closure('to-come', { from: '2026-12-01' }),
            closure('past', { until: '2026-11-10' }),
            closure('works', { kind: 'works', until: '2026-12-05' }),
          ],
        },
      }),
    );
    expect(dated.map(({ id }) => id)).toEqual(['ends', 'to-come']);
  });
});
