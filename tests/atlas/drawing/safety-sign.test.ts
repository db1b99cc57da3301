import { describe, expect, it } from 'vitest';
import { SAFE_CONDITION_SYMBOLS } from '../../../src/atlas/drawing/safe-condition-symbols.ts';
import { SIGN_MEANINGS, safetySign } from '../../../src/atlas/drawing/safety-sign.ts';
import { WARNING_SYMBOLS } from '../../../src/atlas/drawing/warning-symbols.ts';
import { HAZARD_KINDS } from '../../../src/domain/hazard-kinds.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

describe('safety signs', () => {
  it.each(Object.keys(SIGN_MEANINGS))('draws %s as committed', (code) => {
    const svg = safetySign(code, SIGN_MEANINGS[code]);
    expectWellFormed(svg);
    compareDrawing(`sign-${code}`, svg);
  });

  it('has a drawing and a meaning for the same codes', () => {
    const drawn = [...Object.keys(WARNING_SYMBOLS), ...Object.keys(SAFE_CONDITION_SYMBOLS)];
    expect(drawn.sort()).toEqual(Object.keys(SIGN_MEANINGS).sort());
  });

  it('has a sign for every kind of hazard a record may name', () => {
    for (const kind of HAZARD_KINDS) expect(() => safetySign(kind.sign), kind.id).not.toThrow();
  });

  // ISO 3864-1: warning is a black-edged yellow triangle, safe condition a green square.
  it('warns on a yellow triangle and shows a safe condition on a green square', () => {
    expect(safetySign('W012')).toMatch(/fill="#fac800" stroke="#141414"[^>]*d="M50,6L96,85H4z"/);
    expect(safetySign('E010')).toMatch(/fill="#237f52" d="M0,0H90V90H0z"/);
  });

  it('is hidden beside words and named where it stands alone', () => {
    expect(safetySign('W001')).toContain('aria-hidden="true"');
    expect(safetySign('W001', 'Warning')).toContain('role="img" aria-label="Warning"');
  });

  it('names the code it cannot draw, and those it can', () => {
    expect(() => safetySign('W015')).toThrow(/no drawing for "W015"; it draws .*W012/);
  });
});
