import { byMeasure } from '../../../src/domain/clearance-measures.ts';
import type { Dated } from '../../../src/domain/dated.ts';
import type { Hazard } from '../../../src/domain/hazard.ts';
import type { Peg, ReachClaim } from '../../../src/domain/peg.ts';
import type { Move } from '../../../src/domain/stand.ts';
import { rounded } from '../ground/spot.ts';
import { markdownFile, type Value } from './front-matter.ts';
import { metres, slopeText } from './quantities.ts';

/** The text of a peg's record. */
export function pegText(peg: Peg): string {
  return markdownFile(
    {
      peg: peg.retired === undefined ? peg.peg : undefined,
      id: peg.id,
      since: peg.since,
      was: unlessNone((peg.was ?? []).map(({ peg: number, from, until }) => ({ peg: number, from, until }))),
      retired: peg.retired === undefined ? undefined : { from: peg.retired.from, why: peg.retired.why },
      water: peg.water,
      position: { lat: peg.at.lat, lng: peg.at.lng },
      facing: peg.facingDegrees,
      moved: unlessNone((peg.moved ?? []).map(moveFields)),
      where: peg.where,
      features:
        peg.datedFeatures?.map(({ id, from, until }) => ((from ?? until) === undefined ? id : { id, from, until })) ??
        peg.features,
      status: peg.status,
      'status-reason': peg.statusReason,
      'status-since': peg.statusSince,
      platform: unlessEmpty({
        kind: peg.platform?.kind,
        width: metres(peg.platform?.widthMetres),
        length: metres(peg.platform?.lengthMetres),
        height: metres(peg.platform?.heightAboveWaterMetres),
        condition: peg.platform?.condition,
        'rail-height': metres(peg.platform?.railHeightMetres),
        'edge-protection': peg.platform?.edgeProtection,
        'measured-at': peg.platform?.measuredAt,
      }),
      bank: unlessEmpty({
        slope: slopeText(peg.bank?.slopeDegrees),
        height: metres(peg.bank?.heightMetres),
        surface: peg.bank?.surface,
        steps: peg.bank?.steps,
        handrail: peg.bank?.handrail,
      }),
      clearance: unlessEmpty({
        ...byMeasure(({ key, field }) => [key, metres(peg.clearance?.[field])]),
        'measured-on': peg.clearance?.measuredOn,
      }),
      access: unlessEmpty({
        'step-free': peg.access?.stepFree,
        'path-surface': peg.access?.pathSurface,
        accessible: peg.access?.accessible,
      }),
      reach: unlessNone(
        (peg.datedReach ?? peg.reach).map((claim: ReachClaim & Dated) => ({
          what: claim.what,
          distance: `${claim.distanceMetres} m`,
          from: claim.from,
          until: claim.until,
        })),
      ),
      'margin-depth': metres(peg.marginDepthMetres),
      limits: unlessEmpty({
        pole: metres(peg.limits.poleMetres),
        cast: metres(peg.limits.castMetres),
        sector: peg.limits.sectorDegrees,
      }),
      'measured-line-distance':
        peg.measuredLineDistance === undefined
          ? undefined
          : {
              distance: `${rounded(peg.measuredLineDistance.distanceMetres, 1)} m`,
              'measured-on': peg.measuredLineDistance.measuredOn,
              method: peg.measuredLineDistance.method,
            },
      hazards: unlessNone(peg.hazards.map(hazardFields)),
      photos: unlessNone(peg.photos.map((photo) => ({ file: photo.file, alt: photo.alt, credit: photo.credit }))),
    },
    peg.notes
      .map((note) => (note.heading === '' ? note.markdown : `## ${note.heading}\n\n${note.markdown}`))
      .join('\n\n'),
  );
}

function moveFields({
  on,
  metres: moved,
  newGround,
  wasAt,
  wasFacingDegrees,
}: Move): Record<string, Value | undefined> {
  return {
    on,
    metres: moved,
    'new-ground': newGround,
    'was-at': wasAt === undefined ? undefined : { lat: wasAt.lat, lng: wasAt.lng },
    'was-facing': wasFacingDegrees,
  };
}

function hazardFields(hazard: Hazard): Record<string, Value | undefined> {
  return {
    kind: hazard.kind,
    place: hazard.place,
    action: hazard.action,
    control: hazard.control,
    severity: hazard.severity,
    likelihood: hazard.likelihood,
    'severity-after': hazard.severityAfter,
    'likelihood-after': hazard.likelihoodAfter,
    'found-on': hazard.foundOn,
    'checked-on': hazard.checkedOn,
    'cleared-on': hazard.clearedOn,
    'cleared-by': hazard.clearedBy,
    'cleared-why': hazard.clearedWhy,
    round: hazard.round,
    line: hazard.line,
  };
}

function unlessEmpty(fields: Record<string, Value | undefined>): Record<string, Value | undefined> | undefined {
  return Object.values(fields).every((value) => value === undefined) ? undefined : fields;
}

function unlessNone<Item extends Value>(items: readonly Item[]): readonly Item[] | undefined {
  return items.length === 0 ? undefined : items;
}
