import type { Peg } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A peg names features of `venue.md`, each once, and says why it is closed. */
export function checkPegWords({ pegs, settings, settingsSource }: Content): readonly Fault[] {
  const ids = settings.features.map(({ id }) => id);
  const expected = ids.length === 0 ? 'a feature listed in venue.md, which lists none' : `one of ${ids.join(', ')}`;
  const unknown = unknownName('feature-unknown', ids, expected, 'Add it to features in venue.md, or take it out here.');
  return pegs.flatMap(({ value: peg, source }) => [
    ...(settingsSource === null
      ? []
      : peg.features.flatMap((id, index) => (ids.includes(id) ? [] : [unknown(source, ['features', index], id)]))),
    ...doubledFeatures(peg, source),
    ...missingReason(peg, source),
  ]);
}

function doubledFeatures({ features }: Peg, source: Source): readonly Fault[] {
  return features.flatMap((id, index) =>
    features.indexOf(id) === index
      ? []
      : [
          faultAt(source, ['features', index], {
            rule: 'feature-duplicate',
            found: `${shown(id)} a second time`,
            expected: 'each feature once',
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
