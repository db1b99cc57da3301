import type { Day } from '../domain/day.ts';
import { isToldInTwo } from './bag-model.ts';
import type { FirstLook } from './first-look.ts';
import { calibrationOf, scoreForecasts } from './forecast-score.ts';
import { type ForecasterMemory, modelForecaster } from './forecasters.ts';
import { NOTHING_KEPT } from './kept-work.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { PartBacktest } from './ratings.ts';
import { sessionsInModel } from './sessions-in-model.ts';
import { MONTH_SEASON } from './temperature-season.ts';
import { testedEvents } from './tested-events.ts';

/** Fewer matches than this before the year under test, or in it, forecast nothing of a part worth scoring. */
const MIN_EVENTS = 8;

/**
 * Forecasts what each bag part weighs in the year under test from the years before, all of it at once; a part that is often missing
 * where there is some of it. None of a part that was weighed in too few matches of either.
 */
export function partBacktests(
  venue: RatedVenue,
  yearFrom: Day,
  { lesson, asked, start }: Pick<FirstLook, 'lesson' | 'asked' | 'start'>,
  { keeper, guide }: Pick<ForecasterMemory, 'keeper' | 'guide'> = { keeper: NOTHING_KEPT, guide: '' },
): PartBacktest[] {
  return venue.settings.bagParts.flatMap(({ id: part }) => {
    const { sessions: all } = sessionsInModel(venue, part, { dnw: lesson.mechanism ?? undefined });
    const before = all.filter(({ event }) => event.day <= yearFrom);
    const isWhereAny = isToldInTwo(before);
    const counts = (isCensored: boolean) => !isWhereAny || !isCensored;
    const past = before.filter(({ isCensored }) => counts(isCensored));
    const events = testedEvents(
      all.filter(({ isCensored }) => counts(isCensored)),
      yearFrom,
    );
    const pastEvents = new Set(past.filter(({ isCensored }) => !isCensored).map(({ event }) => event.id));
    if (pastEvents.size < MIN_EVENTS || events.length < MIN_EVENTS) return [];
    const memory = { keeper, guide: `${part} ${guide}`, digestOfPast: keeper.beginnings(past) };
    const forecasts = modelForecaster(venue, () => MONTH_SEASON, { asked, start, memory })(past, events.flat());
    let next = 0;
    const forecastEvents = events.map((sessions) => ({ sessions, forecasts: sessions.map(() => forecasts[next++]!) }));
    return [
      {
        part,
        events: events.length,
        sessions: events.flat().filter(({ isCensored }) => !isCensored).length,
        isWhereAny,
        ...scoreForecasts(forecastEvents),
        calibration: calibrationOf(forecastEvents),
      },
    ];
  });
}
