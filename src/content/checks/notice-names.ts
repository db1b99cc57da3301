import type { Notice } from '../../domain/notice.ts';
import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { unknownName } from './unknown-name.ts';

/** A notice speaks of waters and pegs that exist, replaces a notice that exists, and ends no earlier than it begins. */
export function checkNoticeNames({ notices, known }: Content): readonly Fault[] {
  const waters = [...known.waters];
  const unknownWater = unknownName('water-unknown', waters, `one of ${listed(waters)}`, 'Correct the water.');
  const unknownPeg = unknownName('peg-unknown', known.pegs, 'a peg of the venue, as water/peg', 'Correct the peg.');
  const unknownNotice = unknownName(
    'notice-unknown',
    known.notices,
    'the name, without .md, of a file in notices/',
    'Correct the name, or take the line out.',
  );
  return notices.flatMap((notice) => {
    const { value, source } = notice;
    const faults = [...endsBeforeItBegins(notice), ...goesRound(notice, notices)];
    value.waters.forEach((water, index) => {
      if (!known.waters.has(water)) faults.push(unknownWater(source, ['waters', index], water));
    });
    value.pegs.forEach((peg, index) => {
      if (!known.pegs.has(peg)) faults.push(unknownPeg(source, ['pegs', index], peg));
    });
    if (value.replaces !== undefined && !known.notices.has(value.replaces)) {
      faults.push(unknownNotice(source, ['replaces'], value.replaces));
    }
    return faults;
  });
}

function endsBeforeItBegins({ value: { from, until }, source }: Placed<Notice>): readonly Fault[] {
  if (until === undefined || until >= from) return [];
  return [
    faultAt(source, ['until'], {
      rule: 'notice-days',
      found: shown(until),
      expected: `no day before ${from}, when it begins`,
      mend: 'Correct one of the two days.',
    }),
  ];
}

/** Notices that replace each other in a ring would all be hidden. */
function goesRound({ value, source }: Placed<Notice>, notices: readonly Placed<Notice>[]): readonly Fault[] {
  const byId = new Map(notices.map((notice) => [notice.value.id, notice.value.replaces]));
  const passed = new Set<string>();
  let id = value.replaces;
  while (id !== undefined && id !== value.id && !passed.has(id)) {
    passed.add(id);
    id = byId.get(id);
  }
  if (id !== value.id) return [];
  return [
    faultAt(source, ['replaces'], {
      rule: 'notice-ring',
      found: shown(value.replaces ?? ''),
      expected: 'an earlier notice that does not lead back to this one',
      mend: 'Take the line out of the earlier one of them.',
    }),
  ];
}
