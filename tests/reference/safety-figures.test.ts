import { describe, expect, it } from 'vitest';
import type { RiskLevel } from '../../src/domain/hazard.ts';
import { HAZARD_KINDS } from '../../src/domain/hazard-kinds.ts';
import { METRES_PER_FOOT } from '../../src/domain/length.ts';
import { standOffWords } from '../../src/domain/overhead-line-words.ts';
import { riskBand, riskOf } from '../../src/domain/risk.ts';
import {
  MIN_STAND_OFF_METRES,
  SHIPPED_NESTING_MONTHS,
  SHIPPED_REACH,
  SHIPPED_RISK_BANDS,
  SHIPPED_STAND_OFF,
} from '../../src/domain/shipped-settings.ts';
import { SHIPPED_THRESHOLDS } from '../../src/domain/shipped-thresholds.ts';
import { parseSlope } from '../../src/domain/slope.ts';

const figure = (id: string) => {
  const threshold = SHIPPED_THRESHOLDS.find((each) => each.id === id);
  if (threshold === undefined) throw new Error(`No shipped figure ${id}.`);
  return threshold;
};

describe('the stand-off from overhead lines', () => {
  // Energy Networks Association, angling safety release, "at least 30 m from any overhead line": second-hand, read where a
  // magazine reprints it. NIE Networks, FishSafe 2017/2018, "at least 30 m": read there. ESB Networks, fishing tips,
  // "30 m (100 ft), along the ground": read there.
  it('is the published 30 m, in the settings, in the figures and as the least a venue may set', () => {
    expect(MIN_STAND_OFF_METRES).toBe(30);
    expect(SHIPPED_STAND_OFF.metres).toBe(30);
    expect(figure('overhead-line-stand-off')).toMatchObject({ value: 30, unit: 'm', basis: 'second-hand' });
  });

  it('does not fall short of 30 m when it is said in feet (ESB Networks rounds it up to 100 ft)', () => {
    const feet = Number(/\((\d+) ft\)/.exec(standOffWords(30, { length: 'ft' }))?.[1]);
    expect(feet * METRES_PER_FOOT).toBeGreaterThanOrEqual(30);
    expect(feet).toBeLessThanOrEqual(100);
  });

  // HSE GS6 as an operator quotes it: to the ground below the outermost conductor. No source fixes the allowances.
  it('is reckoned to the outermost conductor: something is taken off the mapped centre line', () => {
    expect(SHIPPED_STAND_OFF.conductorSpreadMetres).toBeGreaterThan(0);
    expect(SHIPPED_STAND_OFF.mapErrorMetres).toBeGreaterThan(0);
  });

  // Operators' articles: "long poles exceed 10 m". The longest pole sold, 16 m: common practice, no source.
  it('counts a pole longer than 10 m as swept', () => {
    expect(SHIPPED_REACH.poleMetres).toBeGreaterThan(10);
  });
});

describe('the risk matrix', () => {
  const LEVELS: readonly RiskLevel[] = [1, 2, 3, 4, 5];
  const hazard = (kind: string, severity: RiskLevel, likelihood: RiskLevel) => ({
    kind,
    place: '',
    severity,
    likelihood,
    foundOn: '2026-01-01',
  });

  // ISO 31010:2019, B.10.3, consequence/likelihood matrix (from memory); five by five and the product are custom, and HSE
  // prescribes no grid (facts of the trade).
  it('is the product of consequence and likelihood over five levels of each, as in the usual table', () => {
    const scores = LEVELS.map((severity) =>
      LEVELS.map((likelihood) => riskOf(hazard('trip', severity, likelihood), SHIPPED_RISK_BANDS).before.score),
    );
    expect(scores).toEqual([
      [1, 2, 3, 4, 5],
      [2, 4, 6, 8, 10],
      [3, 6, 9, 12, 15],
      [4, 8, 12, 16, 20],
      [5, 10, 15, 20, 25],
    ]);
  });

  it('gives every score a band, and never a milder one to a higher consequence or likelihood', () => {
    const rank = (score: number) =>
      SHIPPED_RISK_BANDS.indexOf(riskBand(score, SHIPPED_RISK_BANDS) as (typeof SHIPPED_RISK_BANDS)[number]);
    for (const severity of LEVELS) {
      for (const likelihood of LEVELS) {
        expect(rank(severity * likelihood)).toBeGreaterThanOrEqual(0);
        expect(rank(5 * likelihood)).toBeGreaterThanOrEqual(rank(severity * likelihood));
        expect(rank(severity * 5)).toBeGreaterThanOrEqual(rank(severity * likelihood));
      }
    }
    expect(SHIPPED_RISK_BANDS.at(-1)).toBe(riskBand(25, SHIPPED_RISK_BANDS));
  });

  // "Never let a low score hide a power-line or algae rule breach" (facts of the trade); ice: USACE Tulsa 2013, no safe ice.
  // A platform that must not be used: common practice, no source.
  it('stands below the hard rules for lines, algae scum, ice and unsafe platforms, whatever the score', () => {
    expect(HAZARD_KINDS.filter(({ hardRule }) => hardRule).map(({ id }) => id)).toEqual([
      'overhead-line',
      'algae-scum',
      'thin-ice',
      'unsafe-platform',
    ]);
    expect(riskOf(hazard('overhead-line', 1, 1), SHIPPED_RISK_BANDS).hardRule).toBe(true);
  });
});

describe('signs', () => {
  // Names of ISO 7010 signs, read in an open index of the standard, not in the standard itself.
  const NAMES: Readonly<Record<string, string>> = {
    W001: 'general warning',
    W007: 'floor-level obstacle',
    W008: 'drop',
    W009: 'biological hazard',
    W010: 'low temperature',
    W011: 'slippery surface',
    W012: 'electricity',
    W020: 'overhead obstacle',
    W033: 'barbed wire',
    W034: 'bull',
    W035: 'falling objects',
    W043: 'thin ice',
    W047: 'deep water',
    W049: 'submerged objects',
    W051: 'unprotected edge',
    W052: 'unstable cliff edge',
  };

  it('carry codes the standard lists, electricity for a line and not the overhead load of a crane (W015)', () => {
    for (const { sign } of HAZARD_KINDS) expect(NAMES).toHaveProperty(sign);
    expect(HAZARD_KINDS.find(({ id }) => id === 'overhead-line')?.sign).toBe('W012');
    expect(HAZARD_KINDS.find(({ id }) => id === 'thin-ice')?.sign).toBe('W043');
    expect(HAZARD_KINDS.find(({ id }) => id === 'deep-margin')?.sign).toBe('W047');
  });
});

describe('other figures the safety page prints', () => {
  // SEPA, Ponds, Pools and Lochans, 7.7: no steeper than 1 in 4. Local-authority drainage guides 2018: 1 in 3. Angle = atan(rise/run).
  it('put sloping and steep banks at 1 in 4 and 1 in 3', () => {
    const degrees = (text: string) => {
      const slope = parseSlope(text);
      if (!slope.ok) throw new Error(text);
      return slope.value;
    };
    expect(figure('sloping-bank').value).toBeCloseTo(degrees('1 in 4'), 1);
    expect(figure('steep-bank').value).toBeCloseTo(degrees('1 in 3'), 1);
  });

  // RNLI: cold water is below 15 °C (second-hand), shock passes in 60 to 90 s (release of April 2018). National Trust, Hatfield
  // Forest: closed at gusts of 45 mph, 1 mile = 1609.344 m. Ramblers: 30 minutes after the last thunder. RoSPA 2010: kit
  // about 100 m apart, so at most 50 m away. RSPB (second-hand): March to August.
  it('are those of their sources', () => {
    expect(figure('cold-water').value).toBe(15);
    expect(figure('cold-shock-passes').value).toBe(90);
    expect(figure('gust-under-trees').value).toBeCloseTo((45 * 1609.344) / 3600, 1);
    expect(figure('lightning-wait').value).toBe(30);
    expect(figure('rescue-kit-distance').value).toBe(100 / 2);
    expect(SHIPPED_NESTING_MONTHS).toEqual([3, 4, 5, 6, 7, 8]);
  });

  it('each name a source and how far to trust it', () => {
    for (const { source, basis } of SHIPPED_THRESHOLDS) {
      expect(source.length).toBeGreaterThan(10);
      expect(['seen', 'second-hand', 'memory']).toContain(basis);
    }
  });
});
