import { describe, expect, it } from 'vitest';
import { roundFileOf, wholeRoundOf } from '../../../src/client/round/round-file-of.ts';
import { readRoundFile } from '../../../src/content/round-file/read-round-file.ts';
import type { RoundFile } from '../../../src/content/round-file/round-file.ts';
import { emptyDraft, PHOTO, ROUND, WHOLE } from './example-draft.ts';

function fileOf(whole: typeof WHOLE, unit: 'm' | 'ft' = 'm'): RoundFile {
  const made = roundFileOf(whole, unit);
  if (!('file' in made)) throw new Error(JSON.stringify(made.problems));
  return made.file;
}

function sentences(change: Parameters<typeof emptyDraft>[1]): string[] {
  const made = roundFileOf({ ...WHOLE, pegs: [emptyDraft('1', change)], photos: [] }, 'm');
  return 'problems' in made ? made.problems.map(({ sentence }) => sentence) : [];
}

describe('the file of a round', () => {
  it('holds what was typed as figures, and no peg that was not visited', () => {
    expect(fileOf(WHOLE)).toMatchInlineSnapshot(`
      {
        "day": "2026-11-12",
        "format": "peg-atlas-round",
        "gauges": [
          {
            "levelMetres": -0.05,
            "water": "pool",
            "waterDegreesC": 9.5,
          },
        ],
        "guideDay": "2026-11-01",
        "pegs": [
          {
            "at": {
              "lat": 52.7501,
              "lng": -0.0501,
            },
            "clearWidthMetres": 3.5,
            "cut": true,
            "hazards": [
              {
                "did": "cleared",
                "foundOn": "2026-05-05",
                "kind": "trip",
                "likelihood": 3,
                "place": "second step",
                "severity": 2,
              },
              {
                "at": {
                  "lat": 52.75,
                  "lng": -0.05,
                },
                "did": "found",
                "kind": "barbed-wire",
                "likelihood": 2,
                "photo": "p1",
                "place": "left of the platform",
                "severity": 3,
              },
            ],
            "known": {
              "status": "open",
            },
            "lineDistanceMetres": 41,
            "lineMethod": "wheel",
            "lowestBranchMetres": 2.25,
            "note": "<script>alert(1)</script>",
            "pathWidthMetres": 0.9,
            "peg": "1",
            "platform": "damaged",
            "reason": "The bank has slipped",
            "record": "0123456789ab",
            "snagRemoved": true,
            "status": "closed",
            "water": "pool",
          },
          {
            "hazards": [],
            "known": {
              "status": "open",
            },
            "peg": "2",
            "record": "0123456789ab",
            "water": "pool",
          },
        ],
        "photos": [
          {
            "id": "p1",
            "jpeg": "/9j/AIA=",
            "peg": "1",
            "shows": "The wire",
            "water": "pool",
          },
        ],
        "ref": "k7q2xw",
        "venue": {
          "id": "abc",
          "name": "Example Fishery",
        },
        "version": 2,
      }
    `);
  });

  it('is read by the command as it was written', () => {
    const file = fileOf(WHOLE);
    expect(readRoundFile(JSON.stringify(file), 'bank-round.txt')).toEqual({ round: file, faults: [] });
  });

  it('can be read back in, gone on with and handed over again without a change', () => {
    const file = fileOf(WHOLE);
    expect(fileOf(wholeRoundOf(file, 'm'))).toEqual(file);
    const feet = {
      ...WHOLE,
      pegs: [emptyDraft('1', { fields: { 'clear-width': '13 ft 6 in', 'path-width': '3' } })],
      photos: [],
    };
    const written = fileOf(feet, 'ft');
    expect(written.pegs[0]!.clearWidthMetres).toBeCloseTo(4.1148, 9);
    expect(written.pegs[0]!.pathWidthMetres).toBeCloseTo(0.9144, 9);
    expect(fileOf(wholeRoundOf(written, 'ft'), 'ft')).toEqual(written);
  });

  it('takes a comma for the decimal point, as a phone’s keyboard may offer nothing else', () => {
    const file = fileOf({
      ...WHOLE,
      pegs: [emptyDraft('1', { fields: { 'clear-width': '3,5' } })],
      gauges: [{ ref: ROUND.ref, water: 'pool', level: '0,12', temperature: '9,5 °C' }],
      photos: [],
    });
    expect(file.pegs[0]!.clearWidthMetres).toBe(3.5);
    expect(file.gauges).toEqual([{ water: 'pool', levelMetres: 0.12, waterDegreesC: 9.5 }]);
  });

  it('carries a large photo', () => {
    const jpeg = Uint8Array.from({ length: 300_000 }, (_, index) => index % 251).buffer;
    const file = fileOf({ ...WHOLE, photos: [{ ...PHOTO, jpeg }] });
    expect(wholeRoundOf(file, 'm').photos[0]!.jpeg).toEqual(jpeg);
  });
});

describe('what has to be mended before a round is handed over', () => {
  it.each([
    [
      'a length that is none',
      { fields: { 'clear-width': 'wide' } },
      'The clear width “wide” is not a length: a length such as 1.4 m, 45 cm, 4 ft 6 in or 12 yd.',
    ],
    [
      'a length of nothing',
      { fields: { 'line-distance': '0' } },
      'The distance to the line “0” is not a length: more than 0 and at most 500 m.',
    ],
    [
      'a closed peg without a reason',
      { fields: { status: 'closed' } },
      'A closed peg needs the reason, for the angler who has drawn it.',
    ],
    [
      'a hazard without its place',
      { found: [{ id: 'f', kind: 'trip', place: ' ', action: '', severity: '2', likelihood: '2' }] },
      'A hazard found: say where it is.',
    ],
  ])('names %s', (_, change, sentence) => {
    expect(sentences(change)).toEqual([sentence]);
  });

  it('asks for no reason where the peg was closed before', () => {
    expect(sentences({ fields: { status: 'closed' }, known: { status: 'closed', 'status-reason': 'flood' } })).toEqual(
      [],
    );
  });

  it('names a level and a temperature that cannot be', () => {
    const made = roundFileOf(
      { ...WHOLE, gauges: [{ ref: ROUND.ref, water: 'pool', level: 'low', temperature: '95' }] },
      'm',
    );
    expect('problems' in made && made.problems.map(({ field }) => field)).toEqual(['level', 'temperature']);
  });
});

describe('what is at no peg, and what was seen on another day', () => {
  const water = emptyDraft('@', {
    seenOn: '2026-11-12',
    fields: { closing: 'yes', reason: 'flood', until: '2026-11-20', 'notice-title': 'Flood', 'notice-kind': 'hazard' },
  });
  const kit = emptyDraft('@tl-1', { seenOn: '2026-11-13', fields: { kit: 'missing', note: 'hook empty' } });
  const peg = emptyDraft('1', {
    seenOn: '2026-11-12',
    fields: { platform: 'worn', note: 'n' },
    days: { platform: '2026-11-12', note: '2026-11-13' },
    lookedAt: [
      {
        kind: 'algae-scum',
        place: 'bay',
        foundOn: '2026-11-01',
        severity: 5,
        likelihood: 5,
        did: 'cleared',
        by: 'Bailiff',
        why: 'clear three days',
        day: '2026-11-13',
      },
      {
        kind: 'trip',
        place: 'step',
        foundOn: '2026-05-05',
        severity: 2,
        likelihood: 2,
        did: 'worsened',
        severityNow: '4',
        likelihoodNow: '3',
      },
    ],
  });
  const round = { ...WHOLE.round, by: 'Bailiff' };
  const whole = { round, pegs: [peg, water, kit], gauges: [], photos: [{ ...PHOTO, peg: '@tl-1' }] };
  const made = roundFileOf(whole, 'm');

  it('is in the file, with its place and its day', () => {
    expect('file' in made && made.file).toMatchObject({
      version: 2,
      by: 'Bailiff',
      pegs: [
        {
          day: '2026-11-12',
          days: { note: '2026-11-13' },
          hazards: [{ by: 'Bailiff' }, { severity: 4, likelihood: 3 }],
        },
      ],
      places: [
        { water: 'pool', closing: { reason: 'flood', until: '2026-11-20' } },
        { place: 'tl-1', kit: 'missing', note: 'hook empty', day: '2026-11-13' },
      ],
      notices: [{ title: 'Flood', kind: 'hazard' }],
      photos: [{ place: 'tl-1' }],
    });
  });

  it('is the same file again when it is read back in and handed over once more', () => {
    if (!('file' in made)) throw new Error('no file');
    expect(roundFileOf(wholeRoundOf(made.file, 'm'), 'm')).toEqual(made);
  });

  it('is not handed over where a hard rule is cleared without who decided, or a water closed without the reason', () => {
    const [scum] = peg.lookedAt;
    const bare = { ...peg, lookedAt: [{ ...scum!, by: '', why: ' ' }] };
    const unsaid = { ...water, fields: { closing: 'yes' } };
    const refused = roundFileOf({ ...whole, pegs: [bare, unsaid], photos: [] }, 'm');
    expect('problems' in refused && refused.problems.map(({ sentence }) => sentence)).toEqual([
      'Blue-green algae scum, bay is a hard rule: say who decided that it is gone (a role), and why.',
      'A closed water needs the reason, for the angler who comes to it.',
    ]);
  });
});
