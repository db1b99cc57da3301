import { describe, expect, it } from 'vitest';
import { addressWithMonth, chosenMonth, keepMonth, monthFault, readMonth } from '../../src/client/chosen-month.ts';
import { textStore } from './text-store.ts';

describe('the month a reader chose', () => {
  it('is that of the address, else the one kept for this guide', () => {
    const phone = textStore();
    keepMonth(phone, '/guide/', 8);
    expect(chosenMonth('', phone, '/guide/')).toBe(8);
    expect(chosenMonth('?month=3', phone, '/guide/')).toBe(3);
    expect(chosenMonth('', phone, '/')).toBeNull();
    expect(keepMonth(phone, '/guide/', null)).toBe(true);
    expect(keepMonth(null, '/guide/', 3)).toBe(false);
    expect(chosenMonth('', phone, '/guide/')).toBeNull();
    expect(chosenMonth('?month=all', null, '/')).toBe('all');
  });

  it.each(['0', '13', 'June', '8.5', '-1', '', '1e1'])('is none where somebody wrote %j', (text) => {
    expect(readMonth(text)).toBeNull();
    expect(monthFault(`?month=${text}`)).toContain(`“${text}”`);
  });

  it('is said to be wrong only where it was asked for', () => {
    expect(monthFault('')).toBeNull();
    expect(monthFault('?month=12')).toBeNull();
  });

  it('goes into the address and out of it again, and leaves the rest alone', () => {
    const address = addressWithMonth('https://example.org/kiln-pool/1/?a=b#depth', 8);
    expect(address).toBe('https://example.org/kiln-pool/1/?a=b&month=8#depth');
    expect(addressWithMonth(address, null)).toBe('https://example.org/kiln-pool/1/?a=b#depth');
  });
});
