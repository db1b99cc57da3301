import * as z from 'zod/mini';
import { byMeasure, CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import { isDay } from '../../domain/day.ts';
import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import { ROUND_LIMITS } from './round-limits.ts';

/** Says that a file is a bank round, in its first field. */
export const ROUND_FORMAT = 'peg-atlas-round';

/** Counts up whenever an older command could misread a newer file. A file of version 1 is read as one that has no more. */
export const ROUND_VERSION = 2;
const OLDEST_VERSION = 1;

/** The record's fields a round may change, as `path` in its front matter. */
export const ROUND_FIELDS = [
  'status',
  'status-reason',
  'platform.condition',
  ...CLEARANCE_MEASURES.map(({ key }) => `clearance.${key}` as const),
  'measured-line-distance.distance',
  'status-since',
  'platform.inspected-on',
  'clearance.measured-on',
  'measured-line-distance.measured-on',
] as const;

export type RoundField = (typeof ROUND_FIELDS)[number];

/** Text without the control characters that a file of the folder may not hold; line breaks stay. */
const text = (most: number) =>
  z.string().check(
    z.overwrite((typed) => typed.replace(/\r\n?/g, '\n').replace(/[^\P{Cc}\n]/gu, ' ')),
    z.trim(),
    z.minLength(1),
    z.maxLength(most),
  );
const note = text(ROUND_LIMITS.noteCharacters);
const short = text(ROUND_LIMITS.placeCharacters);
/** At most what a record may say of it. */
const metres = (most: number) => z.number().check(z.gt(0), z.lte(most));
const level = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]);
const day = z.string().check(z.refine(isDay, 'a day that exists, such as 2026-11-12'));
const id = z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/, 'a word of letters, digits and hyphens'));
const kind = z.enum(HAZARD_KINDS.map((hazard) => hazard.id) as [string, ...string[]]);

const MAX_RECORD_CHARACTERS = 2000;
/** An id of the map, as its file gives it. */
const mapId = z.string().check(z.minLength(1), z.maxLength(ROUND_LIMITS.placeCharacters));

const isEachOnce = (names: readonly string[]) => new Set(names).size === names.length;

const PlaceSchema = z.strictObject({
  lat: z.number().check(z.gte(-90), z.lte(90)),
  lng: z.number().check(z.gte(-180), z.lte(180)),
});

/** Where the phone was, and how good it said that was. */
const FixSchema = z.extend(PlaceSchema, {
  accuracyMetres: z.exactOptional(z.number().check(z.gte(0), z.lte(100_000))),
});

/** What the guide in the phone said of a field when the round was made, as the record writes it; left out where it said nothing. */
const KnownSchema = z.strictObject(
  Object.fromEntries(ROUND_FIELDS.map((field) => [field, z.exactOptional(z.string())])) as Record<
    RoundField,
    z.ZodMiniExactOptional<z.ZodMiniString>
  >,
);

/** A hazard that was not in the guide, or one that was and has been looked at. */
const HazardFindingSchema = z.discriminatedUnion('did', [
  z.strictObject({
    did: z.literal('found'),
    kind,
    place: short,
    action: z.exactOptional(note),
    severity: level,
    likelihood: level,
    at: z.exactOptional(FixSchema),
    photo: z.exactOptional(id),
    /** The day it was seen; the round's own where left out. So is every `day` below. */
    day: z.exactOptional(day),
  }),
  z.strictObject({
    did: z.enum(['checked', 'worsened', 'controlled', 'cleared']),
    kind,
    place: z.string().check(z.maxLength(MAX_RECORD_CHARACTERS)),
    foundOn: z.string().check(z.maxLength(MAX_RECORD_CHARACTERS)),
    /** As it stands now: of one that has worsened, the new score. */
    severity: level,
    likelihood: level,
    /** What was done about it, and the score after that. */
    control: z.exactOptional(note),
    severityAfter: z.exactOptional(level),
    likelihoodAfter: z.exactOptional(level),
    /** The role that decided that it is cleared, and why. */
    by: z.exactOptional(short),
    why: z.exactOptional(note),
    photo: z.exactOptional(id),
    day: z.exactOptional(day),
  }),
]);

/** What of a peg's finding was seen on another day than the peg was first visited. */
const DATED_FIELDS = [
  'status',
  'platform',
  ...CLEARANCE_MEASURES.map(({ field }) => field),
  'snagRemoved',
  'cut',
  'lineDistanceMetres',
  'at',
  'note',
] as const;

export type DatedField = (typeof DATED_FIELDS)[number];

const DatedFieldsSchema = z.strictObject(
  Object.fromEntries(DATED_FIELDS.map((field) => [field, z.exactOptional(day)])) as Record<
    DatedField,
    z.ZodMiniExactOptional<typeof day>
  >,
);

/** Everything noted at one peg. A field left out was not looked at. */
const PegFindingSchema = z.strictObject({
  water: id,
  peg: id,
  /** Version of the record the guide was built from (`record-version.ts`). */
  record: z.string().check(z.maxLength(64)),
  known: KnownSchema,
  day: z.exactOptional(day),
  days: z.exactOptional(DatedFieldsSchema),
  status: z.exactOptional(z.enum(['open', 'closed'])),
  reason: z.exactOptional(note),
  /** Last day of a closing that is for a time. */
  until: z.exactOptional(day),
  platform: z.exactOptional(short),
  ...byMeasure(({ field, maxMetres }) => [field, z.exactOptional(metres(maxMetres))]),
  snagRemoved: z.exactOptional(z.literal(true)),
  cut: z.exactOptional(z.literal(true)),
  lineDistanceMetres: z.exactOptional(metres(500)),
  lineMethod: z.exactOptional(z.enum(['tape', 'wheel', 'laser'])),
  hazards: z.array(HazardFindingSchema).check(z.maxLength(40)),
  at: z.exactOptional(FixSchema),
  note: z.exactOptional(note),
});

/** What was noted at a path, a gate, a car park or a piece of rescue kit, or of the whole water where `place` is left out. */
const PlaceFindingSchema = z.strictObject({
  water: id,
  place: z.exactOptional(mapId),
  day: z.exactOptional(day),
  kit: z.exactOptional(z.enum(['in-place', 'damaged', 'missing'])),
  hazards: z.array(HazardFindingSchema).check(z.maxLength(40)),
  /** A closing of the whole water. */
  closing: z.exactOptional(z.strictObject({ reason: note, until: z.exactOptional(day) })),
  note: z.exactOptional(note),
});

/** A bank notice written on the bank: of the water, or of pegs on it. */
const NoticeFindingSchema = z.strictObject({
  water: id,
  pegs: z.array(id).check(z.maxLength(ROUND_LIMITS.pegs)),
  kind: z.enum(['hazard', 'works', 'news']),
  title: short,
  text: z.exactOptional(note),
  until: z.exactOptional(day),
  day: z.exactOptional(day),
});

const GaugeFindingSchema = z.strictObject({
  water: id,
  levelMetres: z.exactOptional(z.number().check(z.gte(-20), z.lte(20))),
  waterDegreesC: z.exactOptional(z.number().check(z.gte(-2), z.lte(40))),
  day: z.exactOptional(day),
});

/** A picture, shrunk and stripped on the phone; the command strips it once more. */
const RoundPhotoSchema = z.strictObject({
  id,
  water: id,
  /** The peg it was taken at, or the place; of the whole water where neither is given. */
  peg: z.exactOptional(id),
  place: z.exactOptional(mapId),
  shows: short,
  jpeg: z.string().check(z.maxLength(ROUND_LIMITS.photoCharacters)),
});

/** One bank round as it is handed over: what the phone writes, and reads back, and the intake takes in. */
export const RoundFileSchema = z.strictObject({
  format: z.literal(ROUND_FORMAT),
  version: z.number().check(z.gte(OLDEST_VERSION), z.lte(ROUND_VERSION)),
  venue: z.strictObject({ id: z.string().check(z.maxLength(64)), name: z.string().check(z.maxLength(200)) }),
  /** Day of the data of the guide in the phone. */
  guideDay: day,
  ref: z.string().check(z.regex(/^[a-z0-9]{4,12}$/, '4 to 12 small letters and digits')),
  /** The day the round was begun. */
  day,
  /** The role that walked it, never a name. */
  by: z.exactOptional(short),
  pegs: z.array(PegFindingSchema).check(
    z.maxLength(ROUND_LIMITS.pegs),
    z.refine((pegs) => isEachOnce(pegs.map(({ water, peg }) => `${water}/${peg}`)), 'each peg once'),
  ),
  gauges: z.array(GaugeFindingSchema).check(
    z.maxLength(ROUND_LIMITS.pegs),
    z.refine((gauges) => isEachOnce(gauges.map(({ water }) => water)), 'each water once'),
  ),
  places: z.exactOptional(
    z.array(PlaceFindingSchema).check(
      z.maxLength(ROUND_LIMITS.pegs),
      z.refine((places) => isEachOnce(places.map(({ water, place }) => `${water}/${place ?? ''}`)), 'each place once'),
    ),
  ),
  notices: z.exactOptional(z.array(NoticeFindingSchema).check(z.maxLength(ROUND_LIMITS.notices))),
  photos: z.array(RoundPhotoSchema).check(z.maxLength(ROUND_LIMITS.photos)),
});

export type RoundFile = z.infer<typeof RoundFileSchema>;
export type PegFinding = z.infer<typeof PegFindingSchema>;
export type HazardFinding = z.infer<typeof HazardFindingSchema>;
export type PlaceFinding = z.infer<typeof PlaceFindingSchema>;
export type NoticeFinding = z.infer<typeof NoticeFindingSchema>;
export type Fix = z.infer<typeof FixSchema>;
export type GaugeFinding = z.infer<typeof GaugeFindingSchema>;
export type RoundPhoto = z.infer<typeof RoundPhotoSchema>;
export type Known = z.infer<typeof KnownSchema>;
