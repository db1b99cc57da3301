import * as z from 'zod';
import type { Units } from '../../domain/bag.ts';
import type { Dated } from '../../domain/dated.ts';
import type {
  Access,
  Bank,
  Clearance,
  DatedFeature,
  MeasuredLineDistance,
  Peg,
  Photo,
  Platform,
  ReachClaim,
} from '../../domain/peg.ts';
import { clearanceFields } from './clearance-fields.ts';
import {
  datedFields,
  FeatureEntrySchema,
  FormerNumberSchema,
  moveSchema,
  PEG_NAME,
  RetirementSchema,
  standIdField,
} from './dated-schemas.ts';
import { choice, day, matching, text, wholeNumber, word, yesNo } from './fields.ts';
import { hazardSchema, KeptOpenSchema } from './hazard-schema.ts';
import { bearing, length, slope } from './measures.ts';
import { PegPositionSchema } from './position-schema.ts';
import { reachSchema } from './reach-schema.ts';
import { named, recordSchema } from './record-schema.ts';

const platformFields = (units: Units) => ({
  kind: text('what it is made of: timber, slabs, none'),
  width: named('widthMetres', length(units, 'its width along the bank', 20).exactOptional()),
  length: named('lengthMetres', length(units, 'how far it reaches out', 20).exactOptional()),
  height: named('heightAboveWaterMetres', length(units, 'its height above the water', 5).exactOptional()),
  condition: text('its condition: sound, soft, boards off').exactOptional(),
  'rail-height': named('railHeightMetres', length(units, 'height of its rail', 3).exactOptional()),
  'edge-protection': named('edgeProtection', yesNo('whether its edge is guarded').exactOptional()),
  'measured-at': named('measuredAt', choice(['bank-end', 'middle', 'water-end']).exactOptional()),
  ...datedFields(),
  'inspected-on': named('inspectedOn', day('the day its condition was looked at').exactOptional()),
  'kept-open': named('keptOpen', KeptOpenSchema.exactOptional()),
});

const platformSchema = (units: Units) => recordSchema(platformFields(units)) satisfies z.ZodType<Platform & Dated>;

/** One platform, or all a peg ever had, with their days. */
const platformsSchema = (units: Units) =>
  z.union([
    platformSchema(units).transform((platform): readonly (Platform & Dated)[] => [platform]),
    z.array(platformSchema(units), { error: 'a platform as { kind: timber }, or a list of them with their days' }),
  ]);

const bankSchema = (units: Units) =>
  recordSchema({
    slope: named('slopeDegrees', slope().exactOptional()),
    height: named('heightMetres', length(units, 'height of the bank above the water', 30).exactOptional()),
    surface: text('its surface: grass, stone, mud').exactOptional(),
    steps: wholeNumber('number of steps down', 0, 500).exactOptional(),
    handrail: yesNo('whether there is a handrail').exactOptional(),
  }) satisfies z.ZodType<Bank>;

const clearanceSchema = (units: Units) =>
  recordSchema({
    ...clearanceFields(units),
    'measured-on': named('measuredOn', day().exactOptional()),
  }) satisfies z.ZodType<Clearance>;

const AccessSchema = recordSchema({
  'step-free': named('stepFree', yesNo('whether there is a way to it without a step').exactOptional()),
  'path-surface': named('pathSurface', text('surface of the path').exactOptional()),
  accessible: yesNo('whether the club says a wheelchair user can fish here').exactOptional(),
}) satisfies z.ZodType<Access>;

const measuredLineDistanceSchema = (units: Units) =>
  recordSchema({
    distance: named('distanceMetres', length(units, 'measured along the ground to below the nearest conductor')),
    'measured-on': named('measuredOn', day()),
    method: text('how it was measured: tape, wheel, laser'),
    bearing: named('bearingDegrees', bearing().exactOptional()),
  }) satisfies z.ZodType<MeasuredLineDistance>;

const PhotoSchema = recordSchema({
  file: text('its file below photos/'),
  alt: text('what the picture shows, for those who cannot see it'),
  credit: text('who made it').exactOptional(),
}) satisfies z.ZodType<Photo>;

const claimSchema = (units: Units) =>
  recordSchema({
    what: word('what lies there: far-bank, island, shelf, reeds'),
    distance: named('distanceMetres', length(units, 'how far out it lies', 300)),
    ...datedFields(),
  }) satisfies z.ZodType<ReachClaim & Dated>;

/** A peg record's front matter as it is written, before the day of the guide chooses among what has days. */
export interface PegFields
  extends Omit<Peg, 'peg' | 'facingDegrees' | 'features' | 'platform' | 'reach' | 'notes' | 'file'> {
  /** Left out where the shore is to tell it. */
  readonly facingDegrees?: number;
  /** Left out of the record of a retired stand. */
  readonly peg?: string;
  readonly features: readonly DatedFeature[];
  readonly platforms: readonly (Platform & Dated)[];
  readonly reach: readonly (ReachClaim & Dated)[];
}

/** Every field of a peg record, in the order in which a record is written. */
const pegFields = (units: Units) => ({
  peg: matching(
    PEG_NAME,
    'peg-name',
    "the peg's name: letters, digits and hyphens",
    'Write it as painted on the post: 23 or 14a.',
  ).exactOptional(),
  id: standIdField().exactOptional(),
  since: day('the day it was first fished').exactOptional(),
  was: z.array(FormerNumberSchema, { error: 'a list of former numbers' }).exactOptional(),
  retired: RetirementSchema.exactOptional(),
  water: word("the water's name, as its file in waters/"),
  position: named('at', PegPositionSchema),
  facing: named('facingDegrees', bearing().exactOptional()),
  moved: z.array(moveSchema(units), { error: 'a list of moves' }).exactOptional(),
  where: text('one line that says where it is').exactOptional(),
  features: z.array(FeatureEntrySchema, { error: 'a list such as [corner, reeds]' }).exactOptional(),
  status: choice(['open', 'closed']),
  'status-reason': named('statusReason', text('why it is closed').exactOptional()),
  'status-since': named('statusSince', day().exactOptional()),
  platform: named('platforms', platformsSchema(units).exactOptional()),
  bank: bankSchema(units).exactOptional(),
  clearance: clearanceSchema(units).exactOptional(),
  access: AccessSchema.exactOptional(),
  reach: z.array(claimSchema(units), { error: 'a list of what lies at which distance' }).exactOptional(),
  'margin-depth': named('marginDepthMetres', length(units, 'depth at the edge', 30).exactOptional()),
  limits: reachSchema(units).exactOptional(),
  'measured-line-distance': named('measuredLineDistance', measuredLineDistanceSchema(units).exactOptional()),
  hazards: z.array(hazardSchema(units), { error: 'a list of hazards' }).exactOptional(),
  photos: z.array(PhotoSchema, { error: 'a list of photos' }).exactOptional(),
});

/** What a record that leaves a list out has of it. */
const NOTHING_LISTED = { features: [], platforms: [], reach: [], limits: {}, hazards: [], photos: [] };

/** The front matter of a peg record. A bare length is in the venue's unit. */
export const pegSchema = (units: Units) =>
  recordSchema(pegFields(units)).transform(
    (record): PegFields => ({ ...NOTHING_LISTED, ...record }),
  ) satisfies z.ZodType<PegFields>;
