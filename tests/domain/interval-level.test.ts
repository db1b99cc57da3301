import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { INTERVAL_SDS, INTERVAL_WORDS, LOWER_SHARE, UPPER_SHARE } from '../../src/domain/interval-level.ts';
import { normalCdf } from '../../src/ratings/engine/normal-cdf.ts';

test('an interval is as wide as its level says', () => {
  expect(normalCdf(INTERVAL_SDS) - normalCdf(-INTERVAL_SDS)).toBeCloseTo(UPPER_SHARE - LOWER_SHARE, 12);
  expect(LOWER_SHARE + UPPER_SHARE).toBe(1);
});

test('no other file states the level: not as a width, not as a share of the quantiles, not in words', () => {
  const src = join(import.meta.dirname, '../../src');
  const stating = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => {
    if (!/\.(ts|astro|json)$/.test(name) || name.endsWith('interval-level.ts')) return false;
    // Comments may speak of it.
    const code = readFileSync(join(src, name), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
    return (
      /1\.281[56]/.test(code) ||
      new RegExp(`\\b${INTERVAL_WORDS} (sure|interval)|\\bin ${INTERVAL_WORDS}`, 'i').test(code)
    );
  });
  expect(stating).toEqual([]);
});
