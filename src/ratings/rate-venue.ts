import { backtest } from './backtest.ts';
import { bagTables, fitBag, rateBag } from './bag-model.ts';
import { choiceReturns } from './choice-returns.ts';
import type { LatentFit } from './engine/latent-model.ts';
import { expectedBags } from './expected-bags.ts';
import { featureTemperatures } from './feature-temperatures.ts';
import { firstLook } from './first-look.ts';
import { fishSizes } from './fish-sizes.ts';
import { startFrom } from './fit-ratings.ts';
import { type FitReport, fitReport, unsettledNotes } from './fit-report.ts';
import { framingMakeUp } from './framing-make-up.ts';
import { framingMonths } from './framing-months.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { Ratings } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';
import { whatCannotBeTold } from './what-cannot-be-told.ts';
import { withoutDnw } from './without-dnw.ts';

export interface RateOptions {
  /** Of the simulated fields; the same seed gives the same bytes. */
  readonly seed: number;
  /** Told what is being worked on, for a person who waits. */
  readonly progress?: (what: string) => void;
  /** How the fits of an earlier state of this log ended: saves most of the search, and changes no printed digit. */
  readonly earlier?: readonly FitReport[];
}

/** Rates a checked venue: every table the guide publishes about returns, from its log alone. */
export function rateVenue(venue: RatedVenue, { seed, progress, earlier = [] }: RateOptions): Ratings {
  const parts = venue.settings.bagParts.filter(({ id }) =>
    venue.sessions.some((session) => (session.parts[id]?.weightGrams ?? 0) > 0),
  );
  const fits: FitReport[] = [];
  const report = (of: string, fit: LatentFit) => fits.push(fitReport(of, fit));
  const startOf = (of: string) => earlier.find((fit) => fit.of === of && fit.isSettled)?.start;
  progress?.('first look');
  const look = firstLook(venue);
  const choice = { dnw: look.lesson.mechanism ?? undefined, asked: look.asked };
  progress?.('whole bag');
  if (look.without !== null) report('total without DNWs', look.without.fit);
  const start = startOf('total') ?? look.start;
  const total = rateBag(venue, fitBag(venue, 'total', choice, start === null ? {} : { start }));
  report('total', total.fitted.fit);
  const ofParts = parts.map(({ id, name }) => {
    progress?.(name.toLowerCase());
    const part = rateBag(venue, fitBag(venue, id, choice, { start: startOf(id) ?? startFrom(total.fitted.fit) }));
    report(id, part.fitted.fit);
    if (part.fitted.presence !== null) report(`any ${name.toLowerCase()} at all`, part.fitted.presence.fit);
    return part;
  });
  const tables = [total, ...ofParts].map(bagTables);
  progress?.('chance to frame');
  const expected = expectedBags(venue, [total, ...ofParts], seed);
  progress?.('water temperature');
  const temperatures = featureTemperatures(venue, total.fitted, report);
  const choices = choiceReturns(venue, total.fitted, { progress, report });
  const sensitivity = withoutDnw(venue, look, tables[0]!);
  const { sessions } = total.fitted;
  const tested = backtest(venue, sessions, { progress, report });
  return {
    bags: tables,
    framing: framingMonths(venue),
    expectedBags: expected,
    framingMakeUp: framingMakeUp(venue),
    featureTemperatures: temperatures,
    fishSizes: fishSizes(venue),
    choices,
    backtest: tested,
    leftOut: sessionsInModel(venue, 'total').leftOut,
    withoutDnw: sensitivity,
    dnwLesson: look.lesson,
    fits,
    notes: [...unsettledNotes(fits), ...whatCannotBeTold(venue, sessions)],
  };
}
