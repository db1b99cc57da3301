import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METRES_PER_FOOT } from '../../src/domain/length.ts';
import {
  lineDistanceWords,
  lineHeightWords,
  lineNameWords,
  reachLimitWords,
  standOffWords,
  voltageWords,
} from '../../src/domain/overhead-line-words.ts';

const METRES = { length: 'm' } as const;
const FEET = { length: 'ft' } as const;
const metre = fc.double({ min: 0, max: 500, noNaN: true });
const firstFigure = (words: string) => Number(/[\d.]+/.exec(words)?.[0]);

describe('a distance to an overhead line in words', () => {
  it('is never longer than the distance, in metres or feet', () => {
    fc.assert(
      fc.property(metre, (metres) => {
        expect(firstFigure(lineDistanceWords(metres, METRES))).toBeLessThanOrEqual(metres + 1e-6);
        expect(firstFigure(lineDistanceWords(metres, FEET)) * METRES_PER_FOOT).toBeLessThanOrEqual(metres + 1e-6);
      }),
    );
  });

  it('keeps a whole foot whole', () => {
    expect(lineDistanceWords(144 * METRES_PER_FOOT, FEET)).toBe('144 ft');
  });
});

describe('the stand-off in words', () => {
  it('stands in metres, as published, with no fewer feet where the venue measures in feet', () => {
    expect(standOffWords(30, METRES)).toBe('30 m');
    expect(standOffWords(30, FEET)).toBe('30 m (99 ft)');
    // 100 ft is the other figure in use (ESB Networks): exactly 30.48 m.
    expect(standOffWords(30.48, FEET)).toBe('31 m (100 ft)');
  });
});

describe('a limit of reach in words', () => {
  it('is never longer than the limit: half a metre of pole is not rounded up', () => {
    expect(reachLimitWords(9.5, METRES)).toBe('9.5 m');
    expect(reachLimitWords(20, METRES)).toBe('20 m');
    expect(reachLimitWords(20, FEET)).toBe('20 m (65 ft)');
    expect(reachLimitWords(4.88, METRES)).toBe('4.8 m');
  });
});

describe('what a line carries and how high it hangs', () => {
  it('says of an unknown voltage that it counts as the highest', () => {
    expect(voltageWords({})).toBe('voltage not known: treated as the highest');
    expect(voltageWords({ voltageVolts: 11_000 })).toBe('11 kV');
    expect(voltageWords({ voltageVolts: 400 })).toBe('400 V');
  });

  it('says the voltage once where the name of the line tells it already', () => {
    expect(lineNameWords({ name: '11 kV wood-pole line', voltageVolts: 11_000 })).toBe('11 kV wood-pole line');
    expect(lineNameWords({ name: '11 kV line', voltageVolts: 1000 })).toBe('11 kV line, 1 kV');
    expect(lineNameWords({ name: 'Osier line', voltageVolts: 11_000 })).toBe('Osier line, 11 kV');
    expect(lineNameWords({ name: 'Osier line' })).toBe('Osier line, voltage not known: treated as the highest');
  });

  it('says of a known height that it makes no peg safe, and nothing of an unknown one', () => {
    expect(lineHeightWords({ heightMetres: 7.3 }, METRES)).toBe(
      'mapped 7.3 m high, which makes no peg safe: wires sag',
    );
    expect(lineHeightWords({}, METRES)).toBeNull();
  });
});
