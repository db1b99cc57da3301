import { type Peg, pegKey } from '../../domain/peg.ts';
import { pegStand, WATER_AHEAD_WITHIN_METRES } from '../../ground/peg-stand.ts';
import { CLAIM_WITHIN_METRES, reachFindings } from '../../ground/reach-findings.ts';
import { reachMarks, reachTargets } from '../../ground/reach-targets.ts';
import type { ReachTarget } from '../../ground/survey.ts';
import { effectiveReach } from '../../ground/swept-area.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';
import { positionFaults } from './peg-positions.ts';
import type { WaterGrounds } from './water-grounds.ts';

/** A peg looks out over its water, and what its record claims to lie in front of it lies there on the map. */
export function checkPegOutlook(content: Content, grounds: WaterGrounds): readonly Fault[] {
  return content.waters.flatMap(({ id, map }) => {
    const ground = grounds.get(id);
    if (ground === undefined || map === null) return [];
    const marks = reachMarks(ground, map.map.areas, map.map.places);
    const stands = content.pegs
      // From a wrong place nothing lies where it should.
      .filter((peg) => peg.value.water === id && positionFaults(peg, ground).length === 0)
      .map((peg) => ({
        peg,
        stand: pegStand(peg.value, ground, effectiveReach(peg.value, content.settings.permittedReach)),
      }));
    return stands.flatMap(({ peg, stand }) =>
      stand.edgeMetres === null ? [facesAway(peg)] : claimFaults(peg, reachTargets(stand, ground, marks)),
    );
  });
}

function facesAway({ value, source }: Placed<Peg>): Fault {
  return faultAt(source, ['facing'], {
    rule: 'facing-away',
    found: source.writtenAt(['facing']) ?? String(value.facingDegrees),
    expected: `a bearing with water within ${WATER_AHEAD_WITHIN_METRES} m straight out`,
    mend: 'Take the bearing again, looking out over the float, or correct the position.',
    severity: 'warning',
  });
}

function claimFaults({ value: peg, source }: Placed<Peg>, reach: readonly ReachTarget[]): readonly Fault[] {
  if (peg.reach.length === 0) return [];
  const findings = reachFindings({ pegs: [peg] }, { pegs: { [pegKey(peg.water, peg.peg)]: { reach } } });
  return findings.map(({ what, claimedMetres, mappedMetres }) => {
    const index = (peg.datedReach ?? peg.reach).findIndex(
      (claim) => claim.what === what && claim.distanceMetres === claimedMetres,
    );
    return faultAt(source, ['reach', index, 'distance'], {
      rule: 'reach-map',
      found: `${what} at ${source.writtenAt(['reach', index, 'distance']) ?? claimedMetres}`,
      expected:
        mappedMetres === null
          ? 'something the map shows in front of the peg'
          : `${mappedMetres.toFixed(1)} m, as the map has it, give or take ${CLAIM_WITHIN_METRES} m`,
      mend: 'Measure again, or correct the map or the facing.',
      severity: 'warning',
    });
  });
}
