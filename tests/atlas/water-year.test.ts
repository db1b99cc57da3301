import { describe, expect, it } from 'vitest';
import { waterYear } from '../../src/atlas/water-year.ts';
import { exampleAtlas } from './example-atlas.ts';

describe('the year of a water', () => {
  const year = waterYear(
    exampleAtlas({
      venue: {
        gauge: [
          { water: 'pit', day: '2025-02-01', levelMetres: 0.12, waterDegreesC: 4.2 },
          { water: 'pit', day: '2026-07-01', levelMetres: -0.05, waterDegreesC: 20.5 },
          { water: 'other', day: '2026-07-02', levelMetres: 9 },
        ],
      },
      ratings: {
        framing: [
          {
            water: 'pit',
            month: 11,
            events: 1,
            mostlyFrom: null,
            frameKg: 10,
            winKg: 20,
            frameLowKg: 10,
            frameHighKg: 10,
            winLowKg: 20,
            winHighKg: 20,
          },
        ],
        framingMakeUp: [{ water: 'pit', month: 11, bags: 1, shares: [{ part: 'carp', share: 1 }] }],
      },
    }),
    'pit',
  );

  it('says of each month what frames, what wins and what framing bags are made of', () => {
    expect(year.months[10]?.words).toEqual([
      'November: to frame 22 lb; to win 44 lb. From 1 match.',
      'Framing bags in November: 100% carp (1 bag logged by parts).',
    ]);
    expect(year.months[0]?.words).toEqual([]);
  });

  it('draws weights, make-up and gauge with their figures in words', () => {
    expect(year.framing).toContain('November: to frame 22 lb; to win 44 lb');
    expect(year.makeUp).toContain('100% carp');
    expect(year.gauge).toContain('2025: level 0.12 to 0.12 m above datum, water 4.2 to 4.2 °C');
    expect(year.gauge).toContain('2026: level -0.05 to -0.05 m');
    expect(year.gaugeWords).toBe('The latest year, 2026, is drawn heavy, earlier ones fine.');
  });

  it('has nothing to draw where nothing is logged', () => {
    expect(waterYear(exampleAtlas(), 'pit')).toMatchObject({
      framing: null,
      makeUp: null,
      gauge: null,
      gaugeWords: '',
    });
  });
});
