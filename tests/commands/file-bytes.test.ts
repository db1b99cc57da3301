import { expect, test } from 'vitest';
import { fileBytes, pipedBytes } from '../../src/commands/import/file-bytes.ts';
import { MAX_PAPER_BYTES } from '../../src/content/papers/paper.ts';

type Piece = string | { readonly code: string };

/** A pipe that gives these pieces, or refuses with a code, one a call. */
function pipe(...given: readonly Piece[]) {
  let call = 0;
  return (into: Uint8Array) => {
    const next = given[call++] ?? '';
    if (typeof next !== 'string') throw Object.assign(new Error(next.code), next);
    return new TextEncoder().encodeInto(next, into).written;
  };
}
const read = (...given: readonly Piece[]) => new TextDecoder().decode(pipedBytes(pipe(...given)));

test('what is piped in is read to its end, as Linux and as Windows tell it', () => {
  expect(read('Peg;', 'Weight')).toBe('Peg;Weight');
  expect(read('Peg;', 'Weight', { code: 'EOF' })).toBe('Peg;Weight');
});

test('a writer that has nothing yet is waited for', () => {
  expect(read('Peg;', { code: 'EAGAIN' }, { code: 'EAGAIN' }, 'Weight')).toBe('Peg;Weight');
});

test('what cannot be read is told in words', () => {
  expect(() => read({ code: 'EISDIR' })).toThrow('What is piped in cannot be read (EISDIR)');
  expect(() => fileBytes('/no/such/sheet.csv')).toThrow('There is no file /no/such/sheet.csv. Nothing was changed.');
});

test('of a pipe without end no more is read than tells that it is too long', () => {
  const bytes = pipedBytes((into) => into.length);
  expect(bytes.length).toBeGreaterThan(MAX_PAPER_BYTES);
  expect(bytes.length).toBeLessThan(MAX_PAPER_BYTES + 100_000);
});
