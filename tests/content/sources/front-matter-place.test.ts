import { describe, expect, it } from 'vitest';
import { frontMatterPlace } from '../../../src/content/sources/front-matter-place.ts';

function parts(text: string) {
  const place = frontMatterPlace(text);
  return typeof place === 'string' ? place : [text.slice(place.start, place.end), text.slice(place.body)];
}

describe('frontMatterPlace', () => {
  it.each([
    ['\n', 'line feeds'],
    ['\r\n', 'both'],
    ['\r', 'carriage returns'],
  ])('finds it between its lines, ended by %j', (end) => {
    expect(parts(['---', 'a: 1', '--- ', 'Words.', '---', ''].join(end))).toEqual([
      `a: 1${end}`,
      `Words.${end}---${end}`,
    ]);
  });

  it('looks past a byte order mark and blanks, and ends with the file', () => {
    expect(parts('\uFEFF--- \t\na: 1\n---')).toEqual(['a: 1\n', '']);
  });

  it('takes dashes within a line, or more of them, for text', () => {
    expect(parts('---\na: x --- y\n----\n ---\nb: 2\n---\n')).toEqual(['a: x --- y\n----\n ---\nb: 2\n', '']);
  });

  it('tells a record without front matter from one whose front matter has no end', () => {
    expect(parts('Words.\n---\n')).toBe('missing');
    expect(parts('---\na: 1\n')).toBe('unclosed');
  });
});
