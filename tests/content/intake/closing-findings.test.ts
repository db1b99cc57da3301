import { describe, expect, it } from 'vitest';
import { frontMatterTexts } from '../../../src/content/edit-front-matter.ts';
import { type IntakeOptions, planIntake } from '../../../src/content/intake/plan-intake.ts';
import type { PegFinding, RoundFile } from '../../../src/content/round-file/round-file.ts';
import { exampleRound, FOLDER, findingAt, folderOf } from './example-round.ts';

const BYTES = new Uint8Array([1, 2, 3]);

function filesAfter(round: RoundFile, options: Partial<IntakeOptions> = {}) {
  const photos = new Map(round.photos.map(({ id }) => [id, BYTES]));
  const plan = planIntake(folderOf(FOLDER), [{ file: `bank-round-${round.ref}.txt`, round, photos }], {
    today: '2026-11-20',
    without: new Set(),
    choose: () => undefined,
    ...options,
  });
  expect(plan.faults).toEqual([]);
  return plan.files;
}

/** The status of peg 1 after a round with this finding. */
function statusAfter(finding: Partial<PegFinding>, close: readonly string[] = []) {
  const files = filesAfter(exampleRound({ pegs: [findingAt('1', finding)] }), { close: new Set(close) });
  const text = new TextDecoder().decode(files.find(({ path }) => path === 'pegs/pool/1.md')?.bytes ?? BYTES);
  const { status, 'status-reason': reason, 'status-until': until } = frontMatterTexts(text);
  return { status, reason, until };
}

const byPlatform = 'The platform is unsafe: do not use it.';

describe('a finding that closes its peg', () => {
  it('closes it where the bailiff left it open', () => {
    expect(statusAfter({ platform: 'unsafe: two boards gone' })).toEqual({
      status: 'closed',
      reason: byPlatform,
      until: undefined,
    });
  });

  it('leaves a closing without an end in the bailiff’s own words', () => {
    const own = { status: 'closed', reason: 'Two boards gone: keep off' } as const;
    expect(statusAfter({ ...own, platform: 'unsafe: two boards gone' })).toEqual({ ...own, until: undefined });
  });

  it('outlasts a closing that was to end by itself', () => {
    const short = { status: 'closed', reason: 'Works', until: '2026-12-01' } as const;
    expect(statusAfter({ ...short, platform: 'unsafe: two boards gone' })).toEqual({
      status: 'closed',
      reason: byPlatform,
      until: undefined,
    });
  });

  it('says that it is the line, whatever else it was closed for', () => {
    const own = { status: 'closed', reason: 'Works' } as const;
    expect(statusAfter(own, ['pool/1'])).toEqual({
      status: 'closed',
      reason: 'Inside the stand-off of an overhead line, as measured on the bank.',
      until: undefined,
    });
  });
});

it('takes in the photographs of the round, but for those of a peg that is left out', () => {
  const round = exampleRound({
    pegs: [findingAt('1', {}), findingAt('2', {})],
    photos: [
      { id: 'p1', water: 'pool', peg: '1', shows: 'The slip', jpeg: '' },
      { id: 'p2', water: 'pool', peg: '2', shows: 'The steps', jpeg: '' },
    ],
  });
  const photosOf = (without: readonly string[]) =>
    filesAfter(round, { without: new Set(without) }).flatMap(({ path, bytes }) =>
      path.startsWith('photos/') ? [[path.replace(/-k.*/, ''), bytes]] : [],
    );
  expect(photosOf([])).toEqual([
    ['photos/pool-1', BYTES],
    ['photos/pool-2', BYTES],
  ]);
  expect(photosOf(['pool/1'])).toEqual([['photos/pool-2', BYTES]]);
});
