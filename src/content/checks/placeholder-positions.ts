import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { typed } from '../typed-command.ts';

/**
 * A position that only stands in for one may be read, looked at and built while the guide says on every page that it is
 * made up; as a real venue it is refused, since help would be sent there and distances to lines would be reckoned from it.
 */
export function checkPlaceholderPositions({ pegs, settings, settingsSource }: Content): readonly Fault[] {
  if (settingsSource === null || settings.invented) return [];
  return pegs.flatMap(({ value, source }) => {
    if (source.writtenAt(['position', 'placeholder']) !== 'true') return [];
    return [
      faultAt(source, ['position', 'placeholder'], {
        rule: 'placeholder-position',
        found: `a position that stands in for that of peg ${value.peg}`,
        expected: 'where the peg is: the guide gives its position to ambulances and reckons distances to lines from it',
        mend: `Import it (${typed('import places FILE')}) or write it here and take placeholder out; until then keep invented: true in venue.md.`,
      }),
    ];
  });
}
