import { describe, expect, it } from 'vitest';
import { keepBoard, readBoard } from '../../src/client/gauge-board.ts';

const WATER = { base: '/guide/', id: 'kiln-pool' };

function store(): Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> & { readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, value) => void kept.set(name, value),
    removeItem: (name) => void kept.delete(name),
  };
}

describe('a reading of the gauge board', () => {
  it('is kept for its water and its day alone', () => {
    const phone = store();
    keepBoard(phone, WATER, { metres: -0.14, day: '2026-11-26' });
    expect(readBoard(phone, WATER, '2026-11-26')).toEqual({ metres: -0.14, day: '2026-11-26' });
    expect(readBoard(phone, WATER, '2026-11-27')).toBeNull();
    expect(readBoard(phone, { ...WATER, id: 'eelback' }, '2026-11-26')).toBeNull();
    expect(readBoard(phone, { ...WATER, base: '/' }, '2026-11-26')).toBeNull();
  });

  it('is forgotten again', () => {
    const phone = store();
    keepBoard(phone, WATER, { metres: 0.1, day: '2026-11-26' });
    keepBoard(phone, WATER, null);
    expect(phone.kept.size).toBe(0);
  });

  it.each(['', 'null', '{', '{"metres":"deep","day":"2026-11-26"}', '{"metres":99,"day":"2026-11-26"}', '[]'])(
    'passes over what is none: %s',
    (text) => {
      const phone = store();
      phone.setItem('peg-atlas/guide/gauge-board/kiln-pool', text);
      expect(readBoard(phone, WATER, '2026-11-26')).toBeNull();
    },
  );
});
