import { describe, expect, it } from 'vitest';
import { signed, unsigned } from '../../../src/ratings/engine/vector-module.ts';

/** Worked examples of DWARF Debugging Information Format 4 (2010), appendix C, tables on LEB128. */
describe('numbers in a WebAssembly module', () => {
  it.each([
    [2, [2]],
    [127, [127]],
    [128, [0x80, 1]],
    [129, [1 + 0x80, 1]],
    [12857, [57 + 0x80, 100]],
  ])('writes %i without a sign', (value, bytes) => {
    expect(unsigned(value)).toEqual(bytes);
  });

  it.each([
    [2, [2]],
    [-2, [0x7e]],
    [127, [127 + 0x80, 0]],
    [-127, [1 + 0x80, 0x7f]],
    [128, [0x80, 1]],
    [-128, [0x80, 0x7f]],
    [129, [1 + 0x80, 1]],
    [-129, [0x7f + 0x80, 0x7e]],
  ])('writes %i with its sign', (value, bytes) => {
    expect(signed(value)).toEqual(bytes);
  });
});
