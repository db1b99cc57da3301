import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { openDraw, pulledFault } from '../../src/match-day/bag-draw.ts';
import { drawnPegs, promiseDigest, promiseText, saltText } from '../../src/match-day/phone-draw.ts';

const PROMISE = {
  match: '2026-12-06-winter-three',
  pegs: ['pit/1', 'pit/2', 'pit/3', 'pit/4', 'pit/5'],
  seed: '7f'.repeat(32),
};

/** The method written again from its description, with another library's digest and none of the code under test. */
function drawnAgain(text: string, pegs: readonly string[]): string[] {
  const words: number[] = [];
  for (let counter = 0; counter < 64; counter++) {
    const block = createHash('sha256').update(`${text}\n${counter}`).digest();
    for (let at = 0; at < 32; at += 4) words.push(block.readUInt32BE(at));
  }
  const order = [...pegs];
  for (let i = order.length - 1; i > 0; i--) {
    let word = words.shift()!;
    while (word >= 2 ** 32 - (2 ** 32 % (i + 1))) word = words.shift()!;
    const j = word % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

test('anybody can work out the digest and the draw again with other tools', async () => {
  const digest = createHash('sha256').update(promiseText(PROMISE)).digest('hex');
  expect(await promiseDigest(PROMISE)).toBe(digest);
  expect(await drawnPegs(PROMISE, 'blue bucket')).toEqual(
    drawnAgain(`${promiseText(PROMISE)}\nblue bucket`, PROMISE.pegs),
  );
  try {
    const printed = execFileSync('sha256sum', { input: promiseText(PROMISE), encoding: 'utf8' });
    expect(printed.slice(0, 64)).toBe(digest);
  } catch (error) {
    // A machine without the tool; the digest above is another library's already.
    expect((error as NodeJS.ErrnoException).code).toBe('ENOENT');
  }
});

test('a peg, a seed or a salt more or less gives another digest or another draw', async () => {
  const digest = await promiseDigest(PROMISE);
  expect(await promiseDigest({ ...PROMISE, pegs: PROMISE.pegs.slice(1) })).not.toBe(digest);
  expect(await promiseDigest({ ...PROMISE, seed: '7e'.repeat(32) })).not.toBe(digest);
  const orders = new Set<string>();
  for (const salt of ['six', 'four', 'three', 'one', 'two']) orders.add((await drawnPegs(PROMISE, salt)).join());
  expect(orders.size).toBeGreaterThan(1);
});

test('a salt counts as it was heard', () => {
  expect(saltText('  Blue   BUCKET ')).toBe('blue bucket');
});

test('refuses a peg that is not in the bag or that somebody holds already', () => {
  const pulled = new Map([['Pat', 'pit/2']]);
  expect(pulledFault(PROMISE.pegs, pulled, 'Jo', 'pit/9')).toEqual({ fault: 'not-in-bag' });
  expect(pulledFault(PROMISE.pegs, pulled, 'Jo', 'pit/2')).toEqual({ fault: 'pulled-before', by: 'Pat' });
  expect(pulledFault(PROMISE.pegs, pulled, 'Pat', 'pit/2')).toBeNull();
  expect(openDraw(PROMISE.pegs, ['Pat', 'Jo'], pulled)).toEqual({
    entries: ['Jo'],
    pegs: ['pit/1', 'pit/3', 'pit/4', 'pit/5'],
  });
});
