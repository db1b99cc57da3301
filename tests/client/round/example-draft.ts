import type { PegDraft, PhotoDraft, Round, WholeRound } from '../../../src/client/round/draft.ts';

export const ROUND: Round = {
  ref: 'k7q2xw',
  venue: { id: 'abc', name: 'Example Fishery' },
  guideDay: '2026-11-01',
  day: '2026-11-12',
};

/** A peg where nothing has been noted yet. */
export function emptyDraft(peg = '1', change: Partial<PegDraft> = {}): PegDraft {
  return {
    ref: ROUND.ref,
    water: 'pool',
    peg,
    record: '0123456789ab',
    known: { status: 'open' },
    fields: {},
    lookedAt: [],
    found: [],
    seen: true,
    ...change,
  };
}

export const PHOTO: PhotoDraft = {
  ref: ROUND.ref,
  id: 'p1',
  water: 'pool',
  peg: '1',
  shows: 'The wire',
  jpeg: new Uint8Array([255, 216, 255, 0, 128]).buffer,
};

/** A round with something in every field. */
export const WHOLE: WholeRound = {
  round: ROUND,
  pegs: [
    emptyDraft('1', {
      fields: {
        status: 'closed',
        reason: 'The bank has slipped',
        platform: 'damaged',
        'clear-width': '3.5',
        'lowest-branch': '2.25 m',
        'path-width': '90 cm',
        'snag-removed': 'yes',
        cut: 'yes',
        'line-distance': '41',
        'line-method': 'wheel',
        note: '<script>alert(1)</script>',
      },
      lookedAt: [
        { kind: 'trip', place: 'second step', foundOn: '2026-05-05', severity: 2, likelihood: 3, did: 'cleared' },
        { kind: 'rats', place: 'bank', foundOn: '2026-05-05', severity: 2, likelihood: 3, did: '' },
      ],
      found: [
        {
          id: 'f1',
          kind: 'barbed-wire',
          place: 'left of the platform',
          action: '',
          severity: '3',
          likelihood: '2',
          at: { lat: 52.75, lng: -0.05 },
          photo: 'p1',
        },
      ],
      at: { lat: 52.7501, lng: -0.0501 },
    }),
    emptyDraft('2'),
    emptyDraft('3', { seen: false }),
  ],
  gauges: [{ ref: ROUND.ref, water: 'pool', level: '-0.05', temperature: '9.5' }],
  photos: [PHOTO],
};
