import * as z from 'zod';
import type { BagPart, Units } from '../../domain/bag.ts';
import { parsed, unreadable } from '../../domain/parsed.ts';
import {
  LEAST_STAND_OFF_METRES,
  SHIPPED_INSPECTION,
  SHIPPED_NESTING_MONTHS,
  SHIPPED_RATING_RULES,
  SHIPPED_REACH,
  SHIPPED_RISK_BANDS,
  SHIPPED_STAND_OFF,
} from '../../domain/shipped-settings.ts';
import { withShippedThresholds } from '../../domain/shipped-thresholds.ts';
import type {
  Contact,
  Emergency,
  Feature,
  InspectionIntervals,
  RatingRules,
  RiskBand,
  StandOffRule,
  Threshold,
  VenueSettings,
} from '../../domain/venue.ts';
import {
  choice,
  day,
  fieldOf,
  length,
  matching,
  months,
  number,
  text,
  weight,
  wholeNumber,
  word,
  yesNo,
} from './fields.ts';
import { reachSchema } from './reach-schema.ts';
import { withoutUndefined } from './without-undefined.ts';

/** What a bare number means. */
export const UnitsSchema = z.strictObject(
  { length: choice(['m', 'ft']), weight: choice(['kg', 'lb']) },
  { error: 'the units, as { length: m, weight: lb }' },
) satisfies z.ZodType<Units>;

const address = () =>
  fieldOf(
    (written) =>
      (/^https?:\/\//.test(written) && URL.canParse(written)) || /^\/[^/]/.test(written) || written === '/'
        ? parsed(written)
        : unreadable(
            'address',
            'an address such as https://club.example/guide/',
            'Write the whole address with https:// in front.',
          ),
    { description: 'where the guide will be published' },
  );

const phone = (description: string) =>
  matching(
    /^\+?[0-9][0-9 ()-]{1,24}$/,
    'phone',
    `${description}: figures and spaces`,
    'Write the number in figures, in quotes where it begins with 0.',
  );

const ContactSchema = z
  .strictObject({
    role: text('a role, never a name: Bailiff'),
    phone: phone('a telephone number').exactOptional(),
    email: matching(
      /^[^\s@]+@[^\s@]+\.[^\s@]+$/,
      'email',
      'an e-mail address',
      'Write it as name@club.example.',
    ).exactOptional(),
  })
  .transform((contact) => withoutUndefined(contact)) satisfies z.ZodType<Contact>;

const EmergencySchema = z
  .strictObject(
    {
      number: phone('the emergency number'),
      'power-number': phone('the network operator’s emergency number').exactOptional(),
      'pollution-number': phone('the number for pollution').exactOptional(),
      postcode: text('postcode').exactOptional(),
      directions: text('one line for an ambulance').exactOptional(),
      'gate-note': text('what to say of locked gates').exactOptional(),
    },
    { error: 'the emergency block, at least { number: "999" }' },
  )
  .transform((emergency) =>
    withoutUndefined({
      number: emergency.number,
      powerNumber: emergency['power-number'],
      pollutionNumber: emergency['pollution-number'],
      postcode: emergency.postcode,
      directions: emergency.directions,
      gateNote: emergency['gate-note'],
    }),
  ) satisfies z.ZodType<Emergency>;

const BagPartSchema = z.strictObject({
  id: matching(
    /^[a-z][a-z0-9]{0,19}$/,
    'bag-part-id',
    'a word of small letters and digits, used in names of columns',
    'Write one word such as silvers.',
  ),
  name: text('its name on pages'),
  species: z.array(text('a species'), { error: 'a list such as [roach, rudd]' }),
}) satisfies z.ZodType<BagPart>;

const FeatureSchema = z
  .strictObject({
    id: word('a word pegs use'),
    name: text('its name on pages'),
    meaning: text('what counts as one').exactOptional(),
  })
  .transform((feature) => withoutUndefined(feature)) satisfies z.ZodType<Feature>;

const standOffDistance = (units: Units) =>
  length(units, 'the distance to keep from an overhead line').superRefine((metres, context) => {
    if (metres >= LEAST_STAND_OFF_METRES) return;
    context.addIssue({
      code: 'custom',
      message: `at least ${LEAST_STAND_OFF_METRES} m`,
      params: { rule: 'stand-off-minimum', mend: 'Raise it: a venue may keep further away, never closer.' },
    });
  });

const standOffSchema = (units: Units) =>
  z
    .strictObject({
      distance: standOffDistance(units).exactOptional(),
      'conductor-spread': length(units, 'width between the outermost conductors', 50).exactOptional(),
      'map-error': length(units, 'how far the map may be out', 50).exactOptional(),
    })
    .transform((rule) => ({
      metres: rule.distance ?? SHIPPED_STAND_OFF.metres,
      conductorSpreadMetres: rule['conductor-spread'] ?? SHIPPED_STAND_OFF.conductorSpreadMetres,
      mapErrorMetres: rule['map-error'] ?? SHIPPED_STAND_OFF.mapErrorMetres,
    })) satisfies z.ZodType<StandOffRule>;

const days = (description: string) => wholeNumber(`days between checks of ${description}`, 1, 3660).exactOptional();

const InspectionSchema = z
  .strictObject({
    hazard: days('a hazard'),
    platform: days('a platform'),
    clearance: days('clearance'),
    'rescue-kit': days('rescue kit'),
  })
  .transform((intervals) => ({
    hazardDays: intervals.hazard ?? SHIPPED_INSPECTION.hazardDays,
    platformDays: intervals.platform ?? SHIPPED_INSPECTION.platformDays,
    clearanceDays: intervals.clearance ?? SHIPPED_INSPECTION.clearanceDays,
    rescueKitDays: intervals['rescue-kit'] ?? SHIPPED_INSPECTION.rescueKitDays,
  })) satisfies z.ZodType<InspectionIntervals>;

const RiskBandSchema = z.strictObject({
  from: wholeNumber('the lowest score of the band', 1, 25),
  name: text('its word'),
  meaning: text('what it asks for'),
}) satisfies z.ZodType<RiskBand>;

const ThresholdSchema = z
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

const ratingsSchema = (units: Units) =>
  z
    .strictObject({
      'scale-division': weight(units, "the scale's smallest division").exactOptional(),
      'count-chosen-pegs': yesNo('whether sessions on chosen pegs count').exactOptional(),
    })
    .transform((rules) => ({
      scaleDivisionGrams: rules['scale-division'] ?? SHIPPED_RATING_RULES.scaleDivisionGrams,
      countChosenPegs: rules['count-chosen-pegs'] ?? SHIPPED_RATING_RULES.countChosenPegs,
    })) satisfies z.ZodType<RatingRules>;

/** The front matter of `venue.md`. What may be left out is filled from the shipped settings. */
export const settingsSchema = (units: Units) =>
  z
    .strictObject({
      name: text('the name of the venue'),
      club: text('the name of the club'),
      invented: yesNo('whether the venue is invented').exactOptional(),
      'guide-day': day('the day of the data this guide shows, such as 2026-11-21'),
      address: address().exactOptional(),
      units: UnitsSchema,
      contacts: z.array(ContactSchema, { error: 'a list of contacts' }).exactOptional(),
      emergency: EmergencySchema,
      'bag-parts': z.array(BagPartSchema, { error: 'a list of bag parts, which may be empty: []' }).exactOptional(),
      features: z.array(FeatureSchema, { error: 'a list of features, which may be empty: []' }).exactOptional(),
      'stand-off': standOffSchema(units).exactOptional(),
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
        bagParts: record['bag-parts'] ?? [],
        features: record.features ?? [],
        standOff: record['stand-off'] ?? SHIPPED_STAND_OFF,
        permittedReach: { ...SHIPPED_REACH, ...record['permitted-reach'] },
        inspection: record.inspection ?? SHIPPED_INSPECTION,
        riskBands: record['risk-bands'] ?? SHIPPED_RISK_BANDS,
        thresholds: withShippedThresholds(record.thresholds ?? []),
        ratingRules: record.ratings ?? SHIPPED_RATING_RULES,
        nestingMonths: record['nesting-months'] ?? SHIPPED_NESTING_MONTHS,
      }),
    ) satisfies z.ZodType<Omit<VenueSettings, 'rulesMarkdown'>>;
