import { MONTHS, monthOf } from '../domain/day.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { type EventRatio, eventRatios } from './event-ratios.ts';
import { evidenceOf } from './evidence.ts';
import { interval80 } from './interval.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagTables, ExpectedBag, FramingMonth } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';

const PRIOR_SD = 0.25;

interface Shrunk {
  readonly mean: number;
  readonly sd: number;
  readonly sessions: number;
}

export function firstForm(venue: RatedVenue, bag: string): BagTables {
  const { sessions } = sessionsInModel(venue, bag);
  const ratios = eventRatios(sessions);
  const scatter = Math.sqrt(ratios.reduce((s, r) => s + r.logRatio ** 2, 0) / Math.max(1, ratios.length)) || 0.6;
  const pegs = new Map(venue.pegs.map((peg) => [pegKey(peg.water, peg.peg), peg]));
  const keyOf = ({ from }: EventRatio) => pegKey(from.session.water, from.session.peg);
  const shrink = (some: readonly EventRatio[], towards = 0): Shrunk => {
    const precision = 1 / PRIOR_SD ** 2 + some.length / scatter ** 2;
    const sum = some.reduce((s, r) => s + r.logRatio, 0);
    return {
      mean: (towards / PRIOR_SD ** 2 + sum / scatter ** 2) / precision,
      sd: Math.sqrt(1 / precision),
      sessions: some.length,
    };
  };
  const row = ({ mean, sd, sessions: n }: Shrunk) => ({
    ...interval80(mean, sd),
    sessions: n,
    evidence: evidenceOf(sd, PRIOR_SD),
  });
  const byPeg = Map.groupBy(ratios, keyOf);
  const yearly = new Map(venue.pegs.map((peg) => [peg, shrink(byPeg.get(pegKey(peg.water, peg.peg)) ?? [])]));
  const inMonth = (some: readonly EventRatio[], month: number) =>
    some.filter(({ from }) => monthOf(from.event.day) === month);
  const has = (peg: Pick<Peg, 'features'> | undefined, feature: string) => peg?.features.includes(feature) === true;
  return {
    bag,
    featureMonths: venue.settings.features.flatMap(({ id }) =>
      MONTHS.map((month) => {
        const s = shrink(
          inMonth(
            ratios.filter((r) => has(pegs.get(keyOf(r)), id)),
            month,
          ),
        );
        return { feature: id, month, logReturn: s.mean, sd: s.sd, ...row(s) };
      }),
    ),
    pegs: venue.pegs.map((peg) => ({
      water: peg.water,
      peg: peg.peg,
      logReturn: yearly.get(peg)!.mean,
      sd: yearly.get(peg)!.sd,
    })),
    pegMonths: venue.pegs.flatMap((peg) =>
      MONTHS.map((month) => {
        const s = shrink(inMonth(byPeg.get(pegKey(peg.water, peg.peg)) ?? [], month), yearly.get(peg)!.mean);
        return { water: peg.water, peg: peg.peg, month, return: Math.exp(s.mean), ...row(s) };
      }),
    ),
    model: {
      sd: { event: 0, angler: 0, peg: PRIOR_SD, feature: PRIOR_SD, featureMonth: PRIOR_SD, residual: scatter },
      logMarginal: 0,
      sessions: sessions.length,
      censored: sessions.filter(({ isCensored }) => isCensored).length,
    },
  };
}

export function firstExpectedBags(
  venue: RatedVenue,
  bags: readonly BagTables[],
  framing: readonly FramingMonth[],
): ExpectedBag[] {
  const spread = 0.75;
  const field = venue.events.filter((e) => e.fished !== undefined);
  const share = field.reduce((s, e) => s + e.framePlaces / e.fished!, 0) / Math.max(1, field.length) || 0.2;
  return bags[0]!.pegMonths.map((pegMonth) => {
    const frameKg = framing.find((f) => f.water === pegMonth.water && f.month === pegMonth.month)?.frameKg ?? 5;
    const middleOf = (index: number, scale: number) => {
      const r = bags[index]!.pegMonths.find(
        (p) => p.water === pegMonth.water && p.peg === pegMonth.peg && p.month === pegMonth.month,
      )!;
      const middleKg = r.return * scale;
      return { lowKg: middleKg * Math.exp(-0.67 * spread), middleKg, highKg: middleKg * Math.exp(0.67 * spread) };
    };
    const total = middleOf(0, frameKg * 0.6);
    return {
      water: pegMonth.water,
      peg: pegMonth.peg,
      month: pegMonth.month,
      total,
      parts: bags.slice(1).map((b, i) => ({ part: b.bag, bag: middleOf(i + 1, frameKg * 0.3), chanceOfNone: 0.2 })),
      chanceToFrame: Math.min(0.95, share * pegMonth.return),
      chanceByDraw: share,
      evidence: pegMonth.evidence,
    };
  });
}
