import { describe, expect, it } from 'vitest';
import {
  addressWithUnits,
  chosenUnits,
  differing,
  keepUnits,
  unitsFault,
} from '../../../src/client/units/chosen-units.ts';
import { textStore } from '../text-store.ts';

describe('the units a reader chose', () => {
  it('are those of the address, else the ones kept for this guide, each by itself', () => {
    const phone = textStore();
    expect(keepUnits(phone, '/guide/', { weight: 'kg' })).toBe(true);
    expect(chosenUnits('', phone, '/guide/')).toEqual({ weight: 'kg' });
    expect(chosenUnits('?length=ft', phone, '/guide/')).toEqual({ weight: 'kg', length: 'ft' });
    expect(chosenUnits('?weight=lb', phone, '/guide/')).toEqual({ weight: 'lb' });
    expect(chosenUnits('', phone, '/')).toEqual({});
    keepUnits(phone, '/guide/', {});
    expect(chosenUnits('', phone, '/guide/')).toEqual({});
  });

  it('are said to be none where the address asks for others', () => {
    expect(unitsFault('?weight=stone&length=m')).toBe('The address asks for weights in “stone”: there are lb and kg.');
    expect(unitsFault('?length=yards')).toContain('“yards”: there are m and ft');
    expect([unitsFault(''), unitsFault('?weight=kg&length=ft')]).toEqual([null, null]);
    expect(chosenUnits('?weight=stone', null, '/')).toEqual({});
  });

  it('are told not to be kept by a phone that is full or refuses', () => {
    const full = {
      ...textStore(),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    expect([keepUnits(full, '/', { length: 'ft' }), keepUnits(null, '/', { length: 'ft' })]).toEqual([false, false]);
  });

  it('go into the address where they differ from the venue’s, and out of it again', () => {
    const own = { weight: 'lb', length: 'm' } as const;
    const address = addressWithUnits(
      'https://example.org/kiln-pool/1/?month=8#depth',
      differing({ weight: 'kg', length: 'm', own }),
    );
    expect(address).toBe('https://example.org/kiln-pool/1/?month=8&weight=kg#depth');
    expect(addressWithUnits(address, differing({ ...own, own }))).toBe(
      'https://example.org/kiln-pool/1/?month=8#depth',
    );
  });
});
