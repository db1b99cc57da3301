import { describe, expect, it } from 'vitest';
import { readRoundFile } from '../../../src/content/round-file/read-round-file.ts';
import type { RoundFile } from '../../../src/content/round-file/round-file.ts';
import { exampleRound, findingAt } from '../intake/example-round.ts';

const round: RoundFile = exampleRound({ pegs: [findingAt('1', { note: '<script>alert(1)</script>' })] });

function told(data: unknown): string[] {
  const text = typeof data === 'string' ? data : JSON.stringify(data);
  return readRoundFile(text, 'r.txt').faults.map(
    ({ rule, field, found, expected }) => `${rule} ${field}: ${found}; ${expected}`,
  );
}

describe('reading a round file', () => {
  it('takes a script in a note for the words it is', () => {
    expect(readRoundFile(`\uFEFF${JSON.stringify(round)}`, 'r.txt')).toEqual({ round, faults: [] });
  });

  it('knows a file that was cut short, at any place', () => {
    const text = JSON.stringify(round);
    for (const length of [40, 100, text.length - 1]) {
      expect(told(text.slice(0, length))).toEqual(['round-cut-short : a bank round without its end; a whole file']);
    }
  });

  it.each([
    ['', 'round-format : no bank round; the file the bank round page hands over'],
    ['peg,depth\n1,2', 'round-format : no bank round; the file the bank round page hands over'],
    ['null', 'round-format format: no bank round; a file whose format is "peg-atlas-round"'],
    ['{"format":"other"}', 'round-format format: no bank round; a file whose format is "peg-atlas-round"'],
  ])('refuses what is no round: %j', (text, sentence) => {
    expect(told(text)).toEqual([sentence]);
  });

  it('refuses a newer version before it judges what it cannot know', () => {
    expect(told({ ...round, version: 3, more: true })).toEqual(['round-version : version 3; version 2']);
  });

  it('refuses a peg or a water that stands in it twice, and what is of another shape', () => {
    const [finding] = round.pegs;
    const gauge = { water: 'mill-pond', levelMetres: 0.1 };
    const sentences = told({ ...round, pegs: [finding, finding], gauges: [gauge, gauge], venue: 'x' });
    expect(sentences.map((sentence) => sentence.replace(/: .*; /, ': '))).toEqual([
      'round-value venue: an object',
      'round-value pegs: each peg once',
      'round-value gauges: each water once',
    ]);
  });

  it('tells every impossible value at once, with its place', () => {
    const [finding] = round.pegs;
    const wrong = {
      ...round,
      day: '2026-02-30',
      ref: '../x',
      extra: 1,
      pegs: [
        {
          ...finding,
          peg: '../../venue',
          clearWidthMetres: -2,
          status: 'shut',
          hazards: [{ did: 'found', kind: 'dragon', place: '', severity: 9, likelihood: 1 }],
        },
      ],
    };
    expect(told(wrong)).toMatchInlineSnapshot(`
      [
        "round-value ref: "../x"; 4 to 12 small letters and digits",
        "round-value day: "2026-02-30"; a day that exists, such as 2026-11-12",
        "round-value pegs[0].peg: "../../venue"; a word of letters, digits and hyphens",
        "round-value pegs[0].status: "shut"; one of open, closed",
        "round-value pegs[0].clearWidthMetres: -2; above 0",
        "round-value pegs[0].hazards[0].kind: "dragon"; one of overhead-line, algae-scum, thin-ice, unsafe-platform, steep-bank, slippery, soft-platform, trip, deep-margin, unprotected-edge, undercut-bank, overhanging-branch, falling-branch, submerged-snag, barbed-wire, livestock, giant-hogweed, wasps-bees, ticks, rats, cold-water, electric-fence, deep-silt, sluice-current, flood, vehicles, blocked-way, locked-gate, missing-kit, fish-distress, fallen-tree, low-water, high-water, other",
        "round-value pegs[0].hazards[0].place: ""; at least 1 characters",
        "round-value pegs[0].hazards[0].severity: 9; one of the values a phone writes",
        "round-value : {"format":"peg-atlas-round","version":1,"venue":{"id":"86a26…; no field extra",
      ]
    `);
  });
});
