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
  PermittedReach,
  Photo,
  Platform,
  ReachClaim,
} from '../../domain/peg.ts';
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
import { withoutUndefined } from './without-undefined.ts';

const platformSchema = (units: Units) =>
  z
    .strictObject({
      kind: text('what it is made of: timber, slabs, none'),
      width: length(units, 'its width along the bank', 20).exactOptional(),
      length: length(units, 'how far it reaches out', 20).exactOptional(),
      height: length(units, 'its height above the water', 5).exactOptional(),
      condition: text('its condition: sound, soft, boards off').exactOptional(),
      'rail-height': length(units, 'height of its rail', 3).exactOptional(),
      'edge-protection': yesNo('whether its edge is guarded').exactOptional(),
      'inspected-on': day('the day its condition was looked at').exactOptional(),
      'kept-open': KeptOpenSchema.exactOptional(),
      'measured-at': choice(['bank-end', 'middle', 'water-end']).exactOptional(),
      ...datedFields(),
    })
    .transform((platform) =>
      withoutUndefined({
        kind: platform.kind,
        widthMetres: platform.width,
        lengthMetres: platform.length,
        heightAboveWaterMetres: platform.height,
        condition: platform.condition,
        railHeightMetres: platform['rail-height'],
        edgeProtection: platform['edge-protection'],
        inspectedOn: platform['inspected-on'],
        keptOpen: platform['kept-open'],
        measuredAt: platform['measured-at'],
        from: platform.from,
        until: platform.until,
      }),
    ) satisfies z.ZodType<Platform & Dated>;

/** One platform, or all a peg ever had, with their days. */
const platformsSchema = (units: Units) =>
  z.union([
    platformSchema(units).transform((platform): readonly (Platform & Dated)[] => [platform]),
    z.array(platformSchema(units), { error: 'a platform as { kind: timber }, or a list of them with their days' }),
  ]);

const bankSchema = (units: Units) =>
  z
    .strictObject({
      slope: slope().exactOptional(),
      height: length(units, 'height of the bank above the water', 30).exactOptional(),
      surface: text('its surface: grass, stone, mud').exactOptional(),
      steps: wholeNumber('number of steps down', 0, 500).exactOptional(),
      handrail: yesNo('whether there is a handrail').exactOptional(),
    })
    .transform(({ slope: slopeDegrees, height: heightMetres, ...rest }) =>
      withoutUndefined({ slopeDegrees, heightMetres, ...rest }),
    ) satisfies z.ZodType<Bank>;

const clearanceSchema = (units: Units) =>
  z
    .strictObject({
      'clear-width': length(units, 'clear width of the swim', 100).exactOptional(),
      'lowest-branch': length(units, 'height of the lowest branch', 50).exactOptional(),
      'path-width': length(units, 'clear width of the path', 20).exactOptional(),
      'measured-on': day().exactOptional(),
    })
    .transform((clearance) =>
      withoutUndefined({
        clearWidthMetres: clearance['clear-width'],
        lowestBranchMetres: clearance['lowest-branch'],
        pathWidthMetres: clearance['path-width'],
        measuredOn: clearance['measured-on'],
      }),
    ) satisfies z.ZodType<Clearance>;

const AccessSchema = z
  .strictObject({
    'step-free': yesNo('whether there is a way to it without a step').exactOptional(),
    'path-surface': text('surface of the path').exactOptional(),
    accessible: yesNo('whether the club says a wheelchair user can fish here').exactOptional(),
  })
  .transform((access) =>
    withoutUndefined({
      stepFree: access['step-free'],
      pathSurface: access['path-surface'],
      accessible: access.accessible,
    }),
  ) satisfies z.ZodType<Access>;

const measuredLineDistanceSchema = (units: Units) =>
  z
    .strictObject({
      distance: length(units, 'measured along the ground to below the nearest conductor'),
      'measured-on': day(),
      method: text('how it was measured: tape, wheel, laser'),
      bearing: bearing().exactOptional(),
    })
    .transform(({ distance, 'measured-on': measuredOn, method, bearing: bearingDegrees }) =>
      withoutUndefined({ distanceMetres: distance, measuredOn, method, bearingDegrees }),
    ) satisfies z.ZodType<MeasuredLineDistance>;

const PhotoSchema = z
  .strictObject({
    file: text('its file below photos/'),
    alt: text('what the picture shows, for those who cannot see it'),
    credit: text('who made it').exactOptional(),
  })
  .transform((photo) => withoutUndefined(photo)) satisfies z.ZodType<Photo>;

const claimSchema = (units: Units) =>
  z
    .strictObject({
      what: word('what lies there: far-bank, island, shelf, reeds'),
      distance: length(units, 'how far out it lies', 300),
      ...datedFields(),
    })
    .transform(({ distance, ...claim }): ReachClaim & Dated =>
      withoutUndefined({ ...claim, distanceMetres: distance }),
    );

/** A peg record's front matter as it is written, before the day of the guide chooses among what has days. */
export interface PegFields extends Omit<Peg, 'peg' | 'features' | 'platform' | 'reach' | 'notes' | 'file'> {
  /** Left out of the record of a retired stand. */
  readonly peg?: string;
  readonly features: readonly DatedFeature[];
  readonly platforms: readonly (Platform & Dated)[];
  readonly reach: readonly (ReachClaim & Dated)[];
}

/** The front matter of a peg record. A bare length is in the venue's unit. */
export const pegSchema = (units: Units) =>
  z
    .strictObject({
      peg: matching(
        PEG_NAME,
        'peg-name',
        "the peg's name: letters, digits and hyphens",
        'Write it as painted on the post: 23 or 14a.',
      ).exactOptional(),
      id: standIdField().exactOptional(),
      since: day('the day it was first fished').exactOptional(),
      was: z.array(FormerNumberSchema, { error: 'a list of former numbers' }).exactOptional(),
      moved: z.array(moveSchema(units), { error: 'a list of moves' }).exactOptional(),
      retired: RetirementSchema.exactOptional(),
      water: word("the water's name, as its file in waters/"),
      position: PegPositionSchema,
      facing: bearing(),
      where: text('one line that says where it is').exactOptional(),
      features: z.array(FeatureEntrySchema, { error: 'a list such as [corner, reeds]' }).exactOptional(),
      status: choice(['open', 'closed']),
      'status-reason': text('why it is closed').exactOptional(),
      'status-since': day().exactOptional(),
      platform: platformsSchema(units).exactOptional(),
      bank: bankSchema(units).exactOptional(),
      clearance: clearanceSchema(units).exactOptional(),
      access: AccessSchema.exactOptional(),
      reach: z.array(claimSchema(units), { error: 'a list of what lies at which distance' }).exactOptional(),
      'margin-depth': length(units, 'depth at the edge', 30).exactOptional(),
      limits: reachSchema(units).exactOptional(),
      'measured-line-distance': measuredLineDistanceSchema(units).exactOptional(),
      hazards: z.array(hazardSchema(units), { error: 'a list of hazards' }).exactOptional(),
      photos: z.array(PhotoSchema, { error: 'a list of photos' }).exactOptional(),
    })
    .transform((record) =>
      withoutUndefined({
        water: record.water,
        peg: record.peg,
        id: record.id,
        since: record.since,
        was: record.was,
        moved: record.moved,
        retired: record.retired,
        at: record.position,
        facingDegrees: record.facing,
        where: record.where,
        features: record.features ?? [],
        status: record.status,
        statusReason: record['status-reason'],
        statusSince: record['status-since'],
        platforms: record.platform ?? [],
        bank: record.bank,
        clearance: record.clearance,
        access: record.access,
        reach: record.reach ?? [],
        marginDepthMetres: record['margin-depth'],
        limits: (record.limits ?? {}) satisfies Partial<PermittedReach>,
        measuredLineDistance: record['measured-line-distance'],
        hazards: record.hazards ?? [],
        photos: record.photos ?? [],
      }),
    ) satisfies z.ZodType<PegFields>;
