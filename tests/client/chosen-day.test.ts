import { describe, expect, it } from 'vitest';
import { addressWithDay, chosenDay, dayFault, dayFaultOfAddress, keepDay } from '../../src/client/chosen-day.ts';
import { textStore } from './text-store.ts';

const TODAY = '2026-11-24';

describe('the day a reader chose', () => {
  it('is that of the address, else the one kept for this guide, until it has come', () => {
    const phone = textStore();
    expect(keepDay(phone, '/guide/', '2026-12-06')).toBe(true);
    expect(chosenDay('', phone, '/guide/', TODAY)).toBe('2026-12-06');
    expect(chosenDay('?day=2026-12-20', phone, '/guide/', TODAY)).toBe('2026-12-20');
    expect(chosenDay('', phone, '/', TODAY)).toBeNull();
    expect(chosenDay('', phone, '/guide/', '2026-12-06')).toBeNull();
    expect(chosenDay('', phone, '/guide/', '2027-01-01')).toBeNull();
    keepDay(phone, '/guide/', null);
    expect(chosenDay('', phone, '/guide/', TODAY)).toBeNull();
    expect(keepDay(null, '/', '2026-12-06')).toBe(false);
  });

  it.each([
    ['2026-02-30', '“2026-02-30”'],
    ['tomorrow', '“tomorrow”'],
    ['', '“”'],
    ['2026-11-23', '23 Nov 2026 is not to come'],
    ['2029-01-01', 'more than a year off'],
  ])('is none where somebody asks for %j, and words say why', (day, words) => {
    expect(chosenDay(`?day=${day}`, null, '/', TODAY)).toBeNull();
    expect(dayFault(day, TODAY)).toContain(words);
    expect(dayFaultOfAddress(`?day=${day}`, TODAY)).toContain(words);
  });

  it('leaves an address that asks for none, or for today, without a word', () => {
    expect(dayFaultOfAddress('', TODAY)).toBeNull();
    expect(dayFaultOfAddress(`?day=${TODAY}`, TODAY)).toBeNull();
  });

  it('goes into the address and out of it again, and leaves the rest alone', () => {
    const address = addressWithDay('https://example.org/kiln-pool/1/?month=8#depth', '2026-12-06');
    expect(address).toBe('https://example.org/kiln-pool/1/?month=8&day=2026-12-06#depth');
    expect(addressWithDay(address, null)).toBe('https://example.org/kiln-pool/1/?month=8#depth');
  });
});
