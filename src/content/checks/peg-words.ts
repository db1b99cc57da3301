import { overlap } from '../../domain/dated.ts';
import type { DatedFeature, Peg } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A peg names features of `venue.md`, each once, and says why it is closed. */
export function checkPegWords({ pegs, settings, unsettled }: Content): readonly Fault[] {
  const ids = settings.features.map(({ id }) => id);
  const expected = ids.length === 0 ? 'a feature listed in venue.md, which lists none' : `one of ${ids.join(', ')}`;
  const unknown = unknownName('feature-unknown', ids, expected, 'Add it to features in venue.md, or take it out here.');
  return pegs.flatMap(({ value: peg, source }) => [
    ...(unsettled.has('features')
      ? []
      : everyFeature(peg).flatMap(({ id }, index) =>
          ids.includes(id) ? [] : [unknown(source, ['features', index], id)],
        )),
    ...doubledFeatures(peg, source),
    ...missingReason(peg, source),
  ]);
}

/** All features of a record in its own order, with their days where it gives any. */
function everyFeature({ features, datedFeatures }: Peg): readonly DatedFeature[] {
  return datedFeatures ?? features.map((id) => ({ id }));
}

function doubledFeatures(peg: Peg, source: Source): readonly Fault[] {
  const features = everyFeature(peg);
  return features.flatMap((feature, index) =>
    features.findIndex((other) => other.id === feature.id && overlap(other, feature)) === index
      ? []
      : [
          faultAt(source, ['features', index], {
            rule: 'feature-duplicate',
            found: `${shown(feature.id)} a second time`,
            expected: peg.datedFeatures === undefined ? 'each feature once' : 'each feature once on any day',
            mend: 'Take one of the two out.',
          }),
        ],
  );
}

function missingReason({ status, statusReason }: Peg, source: Source): readonly Fault[] {
  if (status === 'open' || statusReason !== undefined) return [];
  return [
    faultAt(source, ['status'], {
      rule: 'closed-reason',
      found: 'a closed peg without a reason',
      expected: 'status-reason with why it is closed',
      mend: 'Add a line status-reason: it stands wherever the peg appears.',
    }),
  ];
}
