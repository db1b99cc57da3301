import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A league counts matches of the folder, each once, that count their points the same way, and no more of the best than there are. */
export function checkLeagueMatches({ leagues, matches }: Content): readonly Fault[] {
  const known = new Map(matches.map(({ value }) => [value.id, value]));
  const unknownMatch = unknownName(
    'match-unknown',
    known.keys(),
    'the name, without .md, of a file in matches/',
    'Correct the name, or write the match.',
  );
  return leagues.flatMap(({ value, source }) => {
    const faults: Fault[] = [];
    const at = (path: readonly (string | number)[], found: string, expected: string, mend: string) =>
      faults.push(faultAt(source, path, { rule: 'league', found, expected, mend }));
    value.matches.forEach((id, i) => {
      if (!known.has(id)) faults.push(unknownMatch(source, ['matches', i], id));
      if (value.matches.indexOf(id) < i) at(['matches', i], `${shown(id)} again`, 'each match once', 'Take one out.');
    });
    const counts = new Set(value.matches.flatMap((id) => known.get(id)?.scoring.count ?? []));
    if (counts.size > 1) {
      at(
        ['matches'],
        'matches that count points low and high',
        'one way in a league',
        'Correct scoring in one of the matches.',
      );
    }
    if (value.best !== null && value.best > value.matches.length) {
      at(
        ['best'],
        String(value.best),
        `at most ${value.matches.length}, the matches there are`,
        'Correct it, or add the matches.',
      );
    }
    return faults;
  });
}
