import { expect, it } from 'vitest';
import { floatSettings, OVER_DEPTH_METRES } from '../../src/domain/float-settings.ts';

// Common practice, no source: dead depth for heavier hook baits, about 3 in (75 mm) over for light natural baits.
it('sets the float at dead depth for heavy baits and about 3 in over for light ones', () => {
  expect(floatSettings(2)).toEqual({ heavyMetres: 2, lightMetres: 2 + OVER_DEPTH_METRES });
  expect(OVER_DEPTH_METRES).toBeCloseTo(0.075, 2);
});
