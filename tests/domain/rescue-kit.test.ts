import { describe, expect, it } from 'vitest';
import type { MapPlace } from '../../src/domain/map.ts';
import { kitKnown, rescueKitWords } from '../../src/domain/rescue-kit.ts';
import type { BankRound, KitState } from '../../src/domain/round.ts';

const line: MapPlace = {
  id: 'tl-1',
  kind: 'throw-line',
  name: 'Dam',
  at: { lat: 52, lng: 0 },
  checkedOn: '2026-10-01',
};
const look = (day: string, kit: KitState): BankRound => ({
  ref: day,
  day,
  file: '',
  entries: [{ entry: 'kit-checked', water: 'pit', mappedAs: 'tl-1', kit }],
});
const missing = { kind: 'missing-kit', place: 'the post', severity: 5, likelihood: 3, mappedAs: 'tl-1' } as const;

describe('what is known of rescue kit', () => {
  it('is the latest of the map and the rounds', () => {
    expect(kitKnown(line, { id: 'pit' }, [])).toEqual({ checkedOn: '2026-10-01', state: 'in-place' });
    expect(kitKnown(line, { id: 'pit' }, [look('2026-11-01', 'damaged')])).toEqual({
      checkedOn: '2026-11-01',
      state: 'damaged',
    });
    const { checkedOn: _, ...never } = line;
    expect(kitKnown(never, { id: 'pit' }, [])).toEqual({ checkedOn: null, state: null });
  });

  it('is missing until it is found in its place on a later day, or the hazard is cleared', () => {
    const water = { id: 'pit', hazards: [{ ...missing, foundOn: '2026-11-05' }] };
    expect(kitKnown(line, water, [look('2026-11-01', 'in-place')]).state).toBe('missing');
    expect(kitKnown(line, water, [look('2026-11-09', 'in-place')]).state).toBe('in-place');
    const cleared = { id: 'pit', hazards: [{ ...missing, foundOn: '2026-11-05', clearedOn: '2026-11-06' }] };
    expect(kitKnown(line, cleared, []).state).toBe('in-place');
  });

  it('names a piece of rescue kit once', () => {
    expect(rescueKitWords({ kind: 'throw-line', name: 'Throw line K5' })).toBe('Throw line K5');
    expect(rescueKitWords({ kind: 'throw-line', name: 'south bank' })).toBe('Throw line, south bank');
    expect(rescueKitWords({ kind: 'aed', name: 'the lodge' })).toBe('Defibrillator, the lodge');
  });
});
