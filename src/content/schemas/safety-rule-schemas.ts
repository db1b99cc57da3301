import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { LinesSurvey } from '../../domain/lines-survey.ts';
import { MIN_STAND_OFF_METRES, SHIPPED_INSPECTION, SHIPPED_STAND_OFF } from '../../domain/shipped-settings.ts';
import type { InspectionIntervals, RiskBand, StandOffRule, Threshold } from '../../domain/venue.ts';
import { choice, day, number, text, wholeNumber, word, yesNo } from './fields.ts';
import { length } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** An allowance of nothing would hide a peg that is nearer than its map says. The figures are the project's own. */
const MIN_CONDUCTOR_SPREAD_METRES = 0.3;
const MIN_MAP_ERROR_METRES = 1;

const atLeast = (schema: ReturnType<typeof length>, least: number, mend: string) =>
  schema.meta({ ...schema.meta(), minimum: least }).superRefine((metres, context) => {
    if (metres >= least) return;
    context.addIssue({ code: 'custom', message: `at least ${least} m`, params: { rule: 'stand-off-allowance', mend } });
  });

const standOffDistance = (units: Units) =>
  length(units, 'the distance to keep from an overhead line')
    .meta({ minimum: MIN_STAND_OFF_METRES })
    .superRefine((metres, context) => {
      if (metres >= MIN_STAND_OFF_METRES) return;
      context.addIssue({
        code: 'custom',
        message: `at least ${MIN_STAND_OFF_METRES} m`,
        params: { rule: 'stand-off-minimum', mend: 'Raise it: a venue may keep further away, never closer.' },
      });
    });

/** The distance to keep from overhead lines. A venue may raise the shipped one, never lower it. */
export const standOffSchema = (units: Units) =>
  z
    .strictObject({
      distance: standOffDistance(units).exactOptional(),
      'conductor-spread': atLeast(
        length(units, 'width between the outermost conductors', 50),
        MIN_CONDUCTOR_SPREAD_METRES,
        'No line has its wires nearer together; leave it out where it is not known.',
      ).exactOptional(),
      'map-error': atLeast(
        length(units, 'how far the map may be out', 50),
        MIN_MAP_ERROR_METRES,
        'No map of a bank is truer; leave it out where it is not known.',
      ).exactOptional(),
    })
    .transform((rule) => ({
      metres: rule.distance ?? SHIPPED_STAND_OFF.metres,
      conductorSpreadMetres: rule['conductor-spread'] ?? SHIPPED_STAND_OFF.conductorSpreadMetres,
      mapErrorMetres: rule['map-error'] ?? SHIPPED_STAND_OFF.mapErrorMetres,
    })) satisfies z.ZodType<StandOffRule>;

/** Who looked for overhead lines, when and from what. */
export const LinesSurveyedSchema = z.strictObject(
  {
    on: day('the day they were surveyed'),
    by: text('the role that surveyed them, never a name: Bailiff'),
    how: text('from what: walked with the network operator’s plan'),
  },
  { error: 'who looked for overhead lines, as { on: 2026-03-03, by: Bailiff, how: … }' },
) satisfies z.ZodType<LinesSurvey>;

const days = (description: string) => wholeNumber(`days between checks of ${description}`, 1, 3660).exactOptional();

/** Days between checks. */
export const InspectionSchema = z
  .strictObject({
    hazard: days('a hazard'),
    platform: days('a platform'),
    clearance: days('clearance'),
    'rescue-kit': days('rescue kit'),
    lines: days('whether the overhead lines are as mapped'),
  })
  .transform((intervals) => ({
    hazardDays: intervals.hazard ?? SHIPPED_INSPECTION.hazardDays,
    platformDays: intervals.platform ?? SHIPPED_INSPECTION.platformDays,
    clearanceDays: intervals.clearance ?? SHIPPED_INSPECTION.clearanceDays,
    rescueKitDays: intervals['rescue-kit'] ?? SHIPPED_INSPECTION.rescueKitDays,
    linesDays: intervals.lines ?? SHIPPED_INSPECTION.linesDays,
  })) satisfies z.ZodType<InspectionIntervals>;

/** A band of the risk matrix. */
export const RiskBandSchema = z
  .strictObject({
    from: wholeNumber('the lowest score of the band', 1, 25),
    name: text('its word'),
    meaning: text('what it asks for'),
    closes: yesNo('whether a current hazard in it takes its peg out of the draw').exactOptional(),
    'act-within': wholeNumber('days until a hazard in it is to be dealt with', 0, 3660).exactOptional(),
  })
  .transform(({ closes, 'act-within': actWithin, ...band }) =>
    withoutUndefined({
      ...band,
      ...((closes ?? saysOutOfDraw(band.meaning)) ? { closes: true } : {}),
      actWithinDays: actWithin ?? daysToActIn(band.meaning),
    }),
  ) satisfies z.ZodType<RiskBand>;

/** What the usual words of a band set as the days to act in; undefined where they set none. */
function daysToActIn(meaning: string): number | undefined {
  const [, count, unit] = /\bwithin (?:the|a|an|one|(\d{1,3})) (day|week|month)s?\b/i.exec(meaning) ?? [];
  if (unit === undefined) return undefined;
  const days = { day: 1, week: 7, month: 30 }[unit.toLowerCase() as 'day' | 'week' | 'month'];
  return Number(count ?? 1) * days;
}

/** A band that asks for the peg to come out of the draw closes it, unless the venue says otherwise in so many words. */
function saysOutOfDraw(meaning: string): boolean {
  return /\bout of the draw\b|\bclosed\b|\bclose (?:it|the peg)\b|\bnot (?:to be )?fished\b/i.test(meaning);
}

/** A figure a rule rests on, with its source. */
export const ThresholdSchema = z
  .strictObject({
    id: word('which figure'),
    value: number('the figure', -1e6, 1e6),
    unit: text('its unit'),
    source: text('where it comes from'),
    edition: text('edition or year').exactOptional(),
    'checked-on': day('when it was last looked up').exactOptional(),
    basis: choice(['seen', 'second-hand', 'memory', 'club']),
  })
  .transform(({ 'checked-on': checkedOn, ...rest }) =>
    withoutUndefined({ ...rest, checkedOn }),
  ) satisfies z.ZodType<Threshold>;
