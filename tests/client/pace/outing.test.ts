import { describe, expect, it } from 'vitest';
import { forgetOuting, keepOuting, minuteOf, newOuting, readOuting } from '../../../src/client/pace/outing.ts';

const PLACE = { base: '/guide/', water: 'kiln-pool', peg: '14a' };

function store() {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, value: string) => void kept.set(name, value),
    removeItem: (name: string) => void kept.delete(name),
  };
}

describe('an outing on the phone', () => {
  it('is read again as it was kept, for its peg of its guide alone', () => {
    const phone = store();
    const outing = {
      ...newOuting('14a', null, 4.5),
      start: '2026-11-26T22:00:00.000Z',
      caught: [{ minute: 12, part: 'carp', grams: 3000 }],
    };
    expect(keepOuting(phone, PLACE, outing)).toBe(true);
    expect(readOuting(phone, PLACE)).toEqual(outing);
    expect(readOuting(phone, { ...PLACE, base: '/' })).toBeNull();
    expect(readOuting(phone, { ...PLACE, peg: '14' })).toBeNull();
    forgetOuting(phone, PLACE);
    expect(readOuting(phone, PLACE)).toBeNull();
  });

  it.each([
    'not json',
    '{}',
    JSON.stringify({ ...newOuting('14a', null, 5), hours: 0 }),
    JSON.stringify({ ...newOuting('14a', null, 5), start: 'noon' }),
    JSON.stringify({ ...newOuting('14a', null, 5), caught: [{ minute: 1, part: 'carp', grams: -4 }] }),
    JSON.stringify({ ...newOuting('14a', null, 5), target: { kind: 'own', grams: 9e9 } }),
  ])('is passed over where it is none: %s', (text) => {
    const phone = store();
    phone.setItem('peg-atlas/guide/outing/kiln-pool/14a', text);
    expect(readOuting(phone, PLACE)).toBeNull();
  });

  it('says so where the phone keeps nothing', () => {
    const full = {
      ...store(),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    expect(keepOuting(full, PLACE, newOuting('14a', null, 5))).toBe(false);
    expect(keepOuting(null, PLACE, newOuting('14a', null, 5))).toBe(false);
  });

  it('counts minutes over midnight', () => {
    expect(minuteOf({ start: '2026-11-26T22:00:00.000Z' }, new Date('2026-11-27T00:30:00.000Z'))).toBe(150);
    expect(minuteOf({ start: null }, new Date())).toBeNull();
  });
});
