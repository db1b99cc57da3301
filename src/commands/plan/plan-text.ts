import { type Atlas, waterOf } from '../../atlas/atlas.ts';
import { type JudgedPlan, limitedPegs, type MatchPlan, type PlannedSection } from '../../atlas/match-plan.ts';
import type { MatchProblem } from '../../atlas/match-problem.ts';
import type { MendedPlan } from '../../atlas/mend-plan.ts';
import { limitWords } from '../../atlas/peg-safety.ts';
import { countWords } from '../../domain/count-words.ts';
import { formatDay, monthName, monthOf } from '../../domain/day.ts';
import { INTERVAL_WORDS } from '../../domain/interval-level.ts';
import type { Match, MatchSection } from '../../domain/match.ts';
import type { NoPlan } from '../../planning/why-no-plan.ts';
import { textTable } from '../text-table.ts';

/** A plan in words: who is in, the sections with their doubt, and how it does beside random plans. */
export function planText(atlas: Atlas, match: Match, plan: MatchPlan): string[] {
  return [
    ...headLines(atlas, match, plan.problem),
    '',
    ...sectionTable(match, plan.sections),
    '',
    ...(plan.kept.length === 0
      ? []
      : [`Kept for those who need a peg free of steps, not in the bag: ${plan.kept.join(', ')}.`]),
    ...limitLines(atlas, plan.sections),
    ...judgement(match, plan),
  ];
}

/** The plan of the file itself, where a person changed it, beside the best. */
export function judgedText(atlas: Atlas, match: Match, judged: JudgedPlan, plan: MatchPlan): string[] {
  const { planned } = plan;
  return [
    ...headLines(atlas, match, plan.problem),
    '',
    'The plan in the file:',
    ...sectionTable(match, judged.sections),
    '',
    ...judged.broken,
    ...(Number.isNaN(judged.spread) || match.sections === 1
      ? []
      : [
          `Its sections lie ${shown(judged.spread)} apart; those of the best plan ${shown(planned.spread)}, of a middling random one ${shown(planned.random.middle)}.`,
          ...seen(judged.sections),
        ]),
    ...(judged.broken.length > 0
      ? ['To put others in for pegs that may not go in, and move as little else as can be: --mend.']
      : []),
    'To plan it anew: --anew.',
  ];
}

/** Which pegs went out and came in, which changed their section, and what that does to the sections. */
export function mendedText(match: Match, mended: MendedPlan, plan: MatchPlan): string[] {
  const { sections, spread, kept, moved } = mended;
  const name = (peg: string) => nameOf(match, peg);
  return [
    ...mended.out.map(({ peg, section }) => `Out: ${name(peg)}, section ${section}, ${whyOut(plan, peg)}.`),
    ...mended.in.map(({ peg, section }) => `In: ${name(peg)}, section ${section}.`),
    moved.length === 0
      ? 'Every other peg stays where it is.'
      : `In another section than before: ${moved.map(({ peg, from, section }) => `${name(peg)} (${from} → ${section})`).join(', ')}.`,
    '',
    ...sectionLines(match, sections),
    '',
    ...(kept.length === 0 ? [] : [`Kept for those who need a peg free of steps, not in the bag: ${kept.join(', ')}.`]),
    ...(match.sections === 1
      ? []
      : [`Its sections lie ${shown(spread)} apart; those of a plan made anew ${shown(plan.planned.spread)}.`]),
    'What was printed before (weigh sheet, tickets) does not hold any more.',
  ];
}

/** Why nothing is to be mended, or cannot be without moving others. */
export function notMendedText(match: Match, { broken }: JudgedPlan): string[] {
  if (broken.length === 0)
    return [`Every peg of ${match.name} may go in, and its rules are kept: there is nothing to mend.`];
  return [
    ...broken,
    'No other pegs in their places keep the rules of the match while the rest stay in. To plan it anew: --anew.',
  ];
}

function whyOut({ problem }: MatchPlan, peg: string): string {
  const out = problem.notIn.find((each) => each.peg === peg);
  return out === undefined
    ? 'which is no peg of these waters'
    : `${out.by === 'closed' ? 'closed ' : ''}${out.why.replace(/\.$/, '')}`;
}

/** What stands in the way where no plan keeps the rules, and what to do. */
export function noPlanText(atlas: Atlas, match: Match, { notIn, pegs }: MatchProblem, no: NoPlan): string[] {
  return [
    `No plan for ${match.name}: ${whyWords(no, match, pegs.length, watersOf(atlas, match))}`,
    ...notInLines(match, notIn),
  ];
}

function whyWords(no: NoPlan, match: Match, usable: number, waters: string): string {
  switch (no.rule) {
    case 'pegs':
      return usable === 0
        ? `no peg of ${waters} may go in on ${formatDay(match.day)}.`
        : `${match.entries} entries, and ${countWords(usable, 'peg')} of ${waters} may go in on ${formatDay(match.day)}. Take fewer entries, or add a water.`;
    case 'apart':
      return `${match.entries} entries do not fit ${match.apartMetres} m apart on ${countWords(usable, 'peg')} of ${waters}; ${no.most} do. Lower apart, take fewer entries, or add a water.`;
    case 'waters':
      return `${countWords(match.sections, 'section')} equal to one cannot be cut without one that lies on two waters. Change sections or entries so that each water holds whole sections.`;
    case 'step-free':
      return `${match.stepFree} need a peg free of steps, and of the pegs that may go in the records of ${no.most} say so. Correct the records (access: { step-free: true }) or step-free.`;
    case 'ends':
      return 'there are more end pegs than the sections may hold, one each. Write rule: left-out, or more sections.';
    case 'together':
      return 'each rule can be kept by itself, but not all together. Loosen apart, ends or step-free.';
  }
}

function headLines(atlas: Atlas, match: Match, { pegs, notIn }: MatchProblem): string[] {
  const apart = match.apartMetres > 0 ? `, at least ${match.apartMetres} m apart` : '';
  return [
    `${match.name}, ${formatDay(match.day)}: ${match.entries} entries on the ${countWords(pegs.length, 'peg')} of ${watersOf(atlas, match)} that may go in${apart}, in ${countWords(match.sections, 'section')}.`,
    ...notInLines(match, notIn),
  ];
}

/** Pegs that are out for one reason on one line. */
function notInLines(match: Match, notIn: MatchProblem['notIn']): string[] {
  const reasons = Map.groupBy(notIn, ({ by, why }) => (by === 'closed' ? `closed ${why}` : why));
  return [...reasons].map(
    ([why, pegs]) => `Not in: ${pegs.map(({ peg }) => nameOf(match, peg)).join(', ')}, ${why.replace(/\.$/, '')}.`,
  );
}

/** A peg's name in a list of one match: its number alone where there is one water. */
function nameOf(match: Match, peg: string): string {
  return match.waters.length === 1 ? peg.slice(peg.indexOf('/') + 1) : peg;
}

function watersOf(atlas: Atlas, match: Match): string {
  return match.waters.map((id) => waterOf(atlas, id).name).join(' and ');
}

function sectionTable(match: Match, sections: readonly PlannedSection[]): string[] {
  const table = textTable([
    ['', 'worth', `${INTERVAL_WORDS} sure`, 'best of all'],
    ...sections.map(({ name: section, worth }) => [
      section,
      worth.mean.toFixed(2),
      `${worth.low80.toFixed(2)} to ${worth.high80.toFixed(2)}`,
      `${Math.round(worth.chanceBest * 100)}%`,
    ]),
  ]);
  return [
    ...sectionLines(match, sections),
    '',
    ...table,
    `Mean worth of a section’s pegs in ${monthName(monthOf(match.day))}; an average peg of its water = 1.00.`,
  ];
}

function sectionLines(match: Match, sections: readonly MatchSection[]): string[] {
  return sections.map(({ name, pegs }) => `${name.padEnd(3)}${pegs.map((peg) => nameOf(match, peg)).join(' ')}`);
}

/** What has to be said at the draw of pegs that are open within a limit. */
function limitLines(atlas: Atlas, sections: readonly PlannedSection[]): string[] {
  return limitedPegs(atlas, sections).map((peg) => {
    const limits = limitWords(peg, atlas.venue.settings);
    return `Say at the draw: ${peg.water}/${peg.peg} is fished within a limit, ${limits.join(', ')}.`;
  });
}

function judgement(match: Match, plan: MatchPlan): string[] {
  const { planned, sections } = plan;
  if (match.sections === 1) return ['One section: there is nothing to be made equal.'];
  const { random } = planned;
  return [
    `Its sections lie ${shown(planned.spread)} apart. Of ${random.plans.toLocaleString('en-GB')} random plans that keep the same rules the best lies ${shown(random.best)} apart, the middle one ${shown(random.middle)}, the worst ${shown(random.worst)}.`,
    proofWords(planned),
    ...(planned.chosenBy === 'even-gaps'
      ? [
          'The log sees no difference between sections, however they are cut here, so the pegs are spaced evenly instead.',
        ]
      : seen(sections)),
  ];
}

function proofWords({ plansThatKeepRules, chosenBy, proof, spread, leastSpread }: MatchPlan['planned']): string {
  const many =
    plansThatKeepRules < 1e7 ? plansThatKeepRules.toLocaleString('en-GB') : plansThatKeepRules.toExponential(1);
  const plans = `${many} ${plansThatKeepRules === 1 ? 'plan keeps' : 'plans keep'} the rules`;
  if (chosenBy === 'even-gaps') return `${plans}.`;
  if (proof === 'every-plan') return `${plans}: each was weighed, and none has sections nearer to one another.`;
  if (proof === 'bound') return `${plans}: none has sections nearer to one another, which a bound proves.`;
  const least = leastSpread ?? 0;
  return `${plans}, too many to weigh each: this is the best that a search found, and none can lie less than ${shown(least)} apart, which leaves a gap of ${shown(spread - least)}.`;
}

function seen(sections: readonly PlannedSection[]): string[] {
  const out = sections.filter(({ worth }) => worth.standsOut).map(({ name }) => name);
  if (out.length === 0) return ['Between these sections the log sees no difference.'];
  return [
    `The log still sees a difference: ${countWords(out.length, 'section')} (${out.join(', ')}) from the mean of all.`,
  ];
}

function shown(spread: number): string {
  return spread.toFixed(3);
}
