import { isStepFree, type Match } from '../../domain/match.ts';
import { type Peg, type PegKey, pegKey } from '../../domain/peg.ts';
import { hazardsOfWholeWater, pegFacts } from '../../domain/peg-facts.ts';
import { pegVerdict } from '../../domain/peg-verdict.ts';
import { closedBecause } from '../../domain/verdict-words.ts';
import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Placed } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';
import { typed } from '../typed-command.ts';
import { unknownName } from './unknown-name.ts';

/** What a match says fits the folder and itself, and no peg of a match to come is closed on its day. */
export function checkMatchPlans(content: Content): readonly Fault[] {
  const { matches, known, settings, unsettled } = content;
  if (matches.length === 0) return [];
  const waters = [...known.waters];
  const features = settings.features.map(({ id }) => id);
  const unknownWater = unknownName('water-unknown', waters, `one of ${listed(waters)}`, 'Correct the water.');
  const unknownPeg = unknownName('peg-unknown', known.pegs, 'a peg of the venue, as water/peg', 'Correct the peg.');
  const unknownFeature = unknownName(
    'feature-unknown',
    features,
    `one of ${listed(features)}`,
    'Correct it, or add it to features in venue.md.',
  );
  const pegs = new Map(content.pegs.map(({ value }) => [pegKey(value.water, value.peg), value]));
  return matches.flatMap((match) => {
    const { value, source } = match;
    const faults: Fault[] = [];
    value.waters.forEach((water, i) => {
      if (!known.waters.has(water)) faults.push(unknownWater(source, ['waters', i], water));
    });
    value.ends.features.forEach((feature, i) => {
      if (!features.includes(feature) && !unsettled.has('features'))
        faults.push(unknownFeature(source, ['ends', 'features', i], feature));
    });
    const named = namedPegs(value);
    for (const { peg, path } of named) {
      if (!known.pegs.has(peg)) faults.push(unknownPeg(source, path, peg));
      else if (!value.waters.includes(peg.split('/')[0]!)) faults.push(otherWater(match, peg, path));
    }
    return [...faults, ...sizeFaults(match), ...planFaults(match, named, pegs, content), ...busyPegs(match, content)];
  });
}

interface NamedPeg {
  readonly peg: PegKey;
  readonly path: FieldPath;
  readonly isPlanned: boolean;
}

function namedPegs({ plan, kept, leaveOut }: Match): readonly NamedPeg[] {
  return [
    ...leaveOut.map((peg, i) => ({ peg, path: ['leave-out', i], isPlanned: false })),
    ...plan.flatMap(({ name, pegs }) => pegs.map((peg, i) => ({ peg, path: ['pegs', name, i], isPlanned: true }))),
    ...kept.map((peg, i) => ({ peg, path: ['kept', i], isPlanned: false })),
  ];
}

function otherWater({ value, source }: Placed<Match>, peg: PegKey, path: FieldPath): Fault {
  return faultAt(source, path, {
    rule: 'match-water',
    found: `the peg ${shown(peg)}`,
    expected: `a peg of ${value.waters.join(' or ')}, the waters of this match`,
    mend: 'Correct the peg, or add its water to waters.',
  });
}

function sizeFaults({ value, source }: Placed<Match>): readonly Fault[] {
  const faults: Fault[] = [];
  if (value.sections * 2 > value.entries && value.sections > 1) {
    faults.push(
      faultAt(source, ['sections'], {
        rule: 'match-sections',
        found: `${value.sections} sections for ${value.entries} entries`,
        expected: 'at least two anglers in every section: nobody wins a section alone',
        mend: `Write at most ${Math.floor(value.entries / 2)}.`,
      }),
    );
  }
  if (value.places > value.entries) {
    faults.push(
      faultAt(source, ['places'], {
        rule: 'match-places',
        found: `${value.places} places for ${value.entries} entries`,
        expected: 'no more places than entries',
        mend: 'Correct one of the two.',
      }),
    );
  }
  if (value.stepFree > value.entries) {
    faults.push(
      faultAt(source, ['step-free'], {
        rule: 'match-step-free',
        found: `${value.stepFree} of ${value.entries} entries`,
        expected: 'no more than there are entries',
        mend: 'Correct one of the two.',
      }),
    );
  }
  return faults;
}

function planFaults(
  { value, source }: Placed<Match>,
  named: readonly NamedPeg[],
  pegs: ReadonlyMap<PegKey, Peg>,
  content: Content,
): readonly Fault[] {
  if (value.plan.length === 0 && value.kept.length === 0) return [];
  const faults: Fault[] = [];
  const at = (path: FieldPath, rule: string, found: string, expected: string, mend: string, severity?: 'warning') =>
    faults.push(faultAt(source, path, { rule, found, expected, mend, ...(severity && { severity }) }));
  const planned = named.filter(({ isPlanned }) => isPlanned);
  const seen = new Map<PegKey, FieldPath>();
  for (const { peg, path } of planned) {
    const before = seen.get(peg);
    if (before !== undefined) {
      const line = source.placeOf(before).line;
      at(
        path,
        'match-peg-twice',
        `${shown(peg)} again`,
        `each peg once; it is in line ${line} already`,
        'Take one out.',
      );
    }
    seen.set(peg, path);
    if (value.leaveOut.includes(peg)) {
      at(path, 'match-left-out', shown(peg), 'no peg that leave-out names', 'Take it out of one of the two.');
    }
  }
  if (planned.length !== value.entries) {
    at(
      ['pegs'],
      'match-entries',
      `${planned.length} pegs`,
      `${value.entries}, one for each of the entries`,
      'Add or take out pegs, or correct entries. A peg too many stands empty in somebody’s section.',
    );
  }
  if (value.plan.length !== value.sections) {
    at(
      ['pegs'],
      'match-sections',
      `${value.plan.length} sections`,
      `${value.sections}, as sections says`,
      'Correct one of the two.',
    );
  }
  const sizes = value.plan.map((section) => section.pegs.length);
  if (Math.max(...sizes) - Math.min(...sizes) > 1) {
    at(
      ['pegs'],
      'match-sections',
      `sections of ${sizes.join(', ')} pegs`,
      'sections equal to one: points of a larger section count less',
      'Move pegs between neighbouring sections.',
    );
  }
  value.kept.forEach((peg, i) => {
    if (!seen.has(peg))
      at(['kept', i], 'match-kept', shown(peg), 'a peg of the plan', 'Add it to a section, or take it out here.');
    else if (pegs.has(peg) && !isStepFree(pegs.get(peg)!)) {
      at(
        ['kept', i],
        'match-kept',
        `${shown(peg)}, whose record does not say that it is free of steps`,
        'a peg with access: { step-free: true }',
        'Keep another peg, or correct the record of this one.',
      );
    }
  });
  if (value.status === 'planned') {
    for (const { peg, path } of planned) {
      const why = closedOn(pegs.get(peg), value, content);
      if (why === null) continue;
      // A warning, since what closes a peg must never wait for a plan: the match's pages show it closed and leave it out of the bag.
      at(
        path,
        'match-peg-closed',
        `the peg ${shown(peg)}, closed on ${value.day} (${why})`,
        'no closed peg in a match',
        `It is left out of the draw; put another in its place: ${typed(`plan ${value.id} --mend`)}`,
        'warning',
      );
    }
  }
  return faults;
}

/** Pegs that an earlier file has planned into another match of the same day. */
function busyPegs({ value, source }: Placed<Match>, { matches }: Content): readonly Fault[] {
  const others = matches.map((other) => other.value).filter(({ id, day }) => day === value.day && id < value.id);
  return value.plan.flatMap(({ name, pegs }) =>
    pegs.flatMap((peg, i) => {
      const other = others.find(({ plan }) => plan.some((section) => section.pegs.includes(peg)));
      if (other === undefined) return [];
      return [
        faultAt(source, ['pegs', name, i], {
          rule: 'match-peg-busy',
          found: `the peg ${shown(peg)}, which ${other.name} has on the same day`,
          expected: 'a peg for one match of a day',
          mend: 'Plan one of the two anew with leave-out, unless one is over before the other begins.',
          severity: 'warning',
        }),
      ];
    }),
  );
}

/** Why a peg is closed on the day of the match; null where it is not. An open peg inside a stand-off is a fault by itself. */
function closedOn(peg: Peg | undefined, { day }: Match, content: Content): string | null {
  if (peg === undefined) return null;
  const water = content.waters.find(({ id }) => id === peg.water)?.record?.value;
  const notices = content.notices.map(({ value }) => value);
  const ofWater = water === undefined ? [] : hazardsOfWholeWater(water);
  const verdict = pegVerdict(pegFacts(peg, notices, [], content.settings, ofWater), day);
  return verdict.state === 'closed' ? closedBecause(verdict) : null;
}
