import * as z from 'zod';
import type { BagPart, Units } from '../../domain/bag.ts';
import { LANGUAGE_CODES } from '../../domain/language.ts';
import {
  SHIPPED_INSPECTION,
  SHIPPED_NESTING_MONTHS,
  SHIPPED_RATING_RULES,
  SHIPPED_REACH,
  SHIPPED_RISK_BANDS,
  SHIPPED_STAND_OFF,
} from '../../domain/shipped-settings.ts';
import { withShippedThresholds } from '../../domain/shipped-thresholds.ts';
import type { Feature, RatingRules, VenueSettings } from '../../domain/venue.ts';
import { formatField } from '../folder-format.ts';
import { addressField } from './address-field.ts';
import { ContactSchema, EmergencySchema } from './contact-schemas.ts';
import { blankMeaning } from './event-schema.ts';
import { choice, day, matching, text, word, yesNo } from './fields.ts';
import { months, weight } from './measures.ts';
import { reachSchema } from './reach-schema.ts';
import {
  InspectionSchema,
  LinesSurveyedSchema,
  RiskBandSchema,
  standOffSchema,
  ThresholdSchema,
} from './safety-rule-schemas.ts';
import { withoutUndefined } from './without-undefined.ts';

/** What a bare number means. */
export const UnitsSchema = z.strictObject(
  { length: choice(['m', 'ft']), weight: choice(['kg', 'lb']) },
  { error: 'the units, as { length: m, weight: lb }' },
) satisfies z.ZodType<Units>;

const BagPartSchema = z
  .strictObject({
    id: matching(
      /^[a-z][a-z0-9]{0,19}$/,
      'bag-part-id',
      'a word of small letters and digits, used in names of columns',
      'Write one word such as silvers.',
    ),
    name: text('its name on pages'),
    species: z.array(text('a species'), { error: 'a list such as [roach, rudd]' }),
    since: day('the first day on which it was weighed apart').exactOptional(),
  })
  .transform((part) => withoutUndefined(part)) satisfies z.ZodType<BagPart>;

const FeatureSchema = z
  .strictObject({
    id: word('a word pegs use'),
    name: text('its name on pages'),
    meaning: text('what counts as one').exactOptional(),
  })
  .transform((feature) => withoutUndefined(feature)) satisfies z.ZodType<Feature>;

const ratingsSchema = (units: Units) =>
  z
    .strictObject({
      'scale-division': weight(units, "the scale's smallest division").exactOptional(),
      'count-chosen-pegs': yesNo('whether sessions on chosen pegs count').exactOptional(),
      'blank-means': blankMeaning().exactOptional(),
    })
    .transform((rules) =>
      withoutUndefined({
        scaleDivisionGrams: rules['scale-division'] ?? SHIPPED_RATING_RULES.scaleDivisionGrams,
        countChosenPegs: rules['count-chosen-pegs'] ?? SHIPPED_RATING_RULES.countChosenPegs,
        blankMeans: rules['blank-means'],
      }),
    ) satisfies z.ZodType<RatingRules>;

/** The front matter of `venue.md`. What may be left out is filled from the shipped settings. */
export const settingsSchema = (units: Units) =>
  z
    .strictObject({
      format: formatField().exactOptional(),
      name: text('the name of the venue'),
      club: text('the name of the club'),
      invented: yesNo('whether the venue is invented').exactOptional(),
      'guide-day': day('the day of the data this guide shows, such as 2026-11-21'),
      address: addressField('where the guide will be published').exactOptional(),
      units: UnitsSchema,
      language: choice(LANGUAGE_CODES).exactOptional(),
      contacts: z.array(ContactSchema, { error: 'a list of contacts' }).exactOptional(),
      emergency: EmergencySchema,
      'bag-parts': z.array(BagPartSchema, { error: 'a list of bag parts, which may be empty: []' }).exactOptional(),
      features: z.array(FeatureSchema, { error: 'a list of features, which may be empty: []' }).exactOptional(),
      'stand-off': standOffSchema(units).exactOptional(),
      'lines-surveyed': LinesSurveyedSchema.exactOptional(),
      'permitted-reach': reachSchema(units).exactOptional(),
      inspection: InspectionSchema.exactOptional(),
      'risk-bands': z.array(RiskBandSchema, { error: 'a list of bands' }).exactOptional(),
      thresholds: z.array(ThresholdSchema, { error: 'a list of thresholds' }).exactOptional(),
      ratings: ratingsSchema(units).exactOptional(),
      'nesting-months': months().exactOptional(),
    })
    .transform((record) =>
      withoutUndefined({
        name: record.name,
        club: record.club,
        invented: record.invented ?? false,
        guideDay: record['guide-day'],
        address: record.address,
        contacts: record.contacts ?? [],
        emergency: record.emergency,
        units: record.units,
        language: record.language ?? 'en',
        bagParts: record['bag-parts'] ?? [],
        features: record.features ?? [],
        standOff: record['stand-off'] ?? SHIPPED_STAND_OFF,
        linesSurveyed: record['lines-surveyed'],
        permittedReach: { ...SHIPPED_REACH, ...record['permitted-reach'] },
        inspection: record.inspection ?? SHIPPED_INSPECTION,
        riskBands: record['risk-bands'] ?? SHIPPED_RISK_BANDS,
        thresholds: withShippedThresholds(record.thresholds ?? []),
        ratingRules: record.ratings ?? SHIPPED_RATING_RULES,
        nestingMonths: record['nesting-months'] ?? SHIPPED_NESTING_MONTHS,
      }),
    ) satisfies z.ZodType<Omit<VenueSettings, 'rulesMarkdown'>>;
