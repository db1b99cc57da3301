import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withFormulaGuard, withoutFormulaGuard } from '../../../src/content/sources/formula-guard.ts';

describe('text that a spreadsheet would run', () => {
  // The signs are those OWASP names under "CSV injection".
  it.each(['=HYPERLINK("x")', '+1+1', '-2+3', '@SUM(A1)', '\tx', '\rx'])('opens as text: %j', (text) => {
    expect(withFormulaGuard(text)).toBe(`'${text}`);
  });

  it('reads back as it was typed', () => {
    const typed = fc.stringMatching(/^['=+\-@\t a]{0,6}$/);
    fc.assert(
      fc.property(typed, (text) => {
        expect(withoutFormulaGuard(withFormulaGuard(text))).toBe(text);
        expect(withFormulaGuard(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });
});
