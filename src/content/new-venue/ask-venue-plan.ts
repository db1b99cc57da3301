import { type Day, isDay } from '../../domain/day.ts';
import { waterSlug } from '../papers/places/settle-places.ts';
import type { Asker, Question } from '../papers/questions.ts';
import { pegNumbers } from './peg-numbers.ts';
import { partId } from './plan-files.ts';
import type { LinesPlan, VenuePlan, WaterPlan } from './venue-plan.ts';

/** What the answers are kept under: they hold for the start of one venue. */
const OF = 'start';

/** Asks what a new venue needs; null while a question is open. */
export function askVenuePlan(day: Day, asker: Asker): VenuePlan | null {
  const name = asker.ask(text('name', 'What is the venue called?', 'as it stands on the board at the gate'));
  const club = asker.ask(text('club', 'Which club or fishery keeps the guide?', 'its name, no person’s'));
  const waters = asker.ask({
    ...text('waters', 'Which waters does it have?', 'their names with commas between them: Long Pool, Mere'),
    check: (answer) => (waterNames(answer) === null ? 'Expected names with commas between them, each once.' : null),
  });
  const lengths = asker.ask(
    choice('lengths', 'In what does the club measure lengths?', [
      ['m', 'metres'],
      ['ft', 'feet and inches'],
    ]),
  );
  const weights = asker.ask(
    choice('weights', 'In what does the club weigh?', [
      ['lb', 'pounds and ounces'],
      ['kg', 'kilograms'],
    ]),
  );
  const parts = asker.ask({
    ...text(
      'parts',
      'What is weighed apart?',
      'such as: silvers, carp. Write "none" where only the whole bag is weighed',
    ),
    suggested: 'silvers, carp',
    check: (answer) =>
      partNames(answer) === null ? 'Expected words with commas between them, each once, or none.' : null,
  });
  const lines = askLines(day, asker);
  const waterPlans = waters === null ? null : (waterNames(waters) ?? []).map((water) => askWater(water, asker));
  if (name === null || club === null || waterPlans === null || lengths === null || weights === null) return null;
  if (parts === null || lines === null || !waterPlans.every((plan) => plan !== null)) return null;
  return {
    name,
    club,
    day,
    lengths: lengths === 'ft' ? 'ft' : 'm',
    weights: weights === 'kg' ? 'kg' : 'lb',
    parts: partNames(parts) ?? [],
    waters: waterPlans,
    lines,
  };
}

/** Asks which pegs a water has; null while that is open. */
export function askWater(name: string, asker: Asker): WaterPlan | null {
  const pegs = asker.ask({
    ...text(`pegs of ${name}`, `Which pegs has ${name}?`, 'how many, 24, or which: 1-20, 22, 24a'),
    check: (answer) =>
      pegNumbers(answer) === null ? 'Expected how many, such as 24, or which, such as 1-20, 22, 24a.' : null,
  });
  return pegs === null ? null : { id: waterSlug(name), name, pegs: pegNumbers(pegs) ?? [] };
}

function askLines(day: Day, asker: Asker): LinesPlan | null {
  const state = asker.ask(
    choice('overhead lines', 'Are there overhead electric lines at or near the waters?', [
      ['not-looked', 'nobody has looked for them on purpose: every sheet will say so until somebody has'],
      ['none-found', 'somebody looked, with the network operator’s plan, and found none'],
      ['known', 'there are some: every peg is written as closed until they are on the map'],
    ]),
  );
  if (state !== 'none-found') return state === null ? null : { state: state === 'known' ? 'known' : 'not-looked' };
  const on = asker.ask({
    ...text('lines looked for on', 'On which day did somebody look for lines?', 'YYYY-MM-DD'),
    check: (answer) => (isDay(answer) && answer <= day ? null : `Expected a day up to ${day}, as YYYY-MM-DD.`),
  });
  const by = asker.ask(text('lines looked for by', 'In what role?', 'Bailiff, Secretary: no name'));
  const how = asker.ask(text('lines looked for how', 'How?', 'walked with the network operator’s plan'));
  return on === null || by === null || how === null || !isDay(on) ? null : { state: 'looked', on, by, how };
}

function text(key: string, ask: string, evidence: string): Question {
  return { scope: 'papers', of: OF, key, ask, evidence: [evidence], choices: null, check: plainText };
}

function choice(key: string, ask: string, choices: readonly (readonly [string, string])[]): Question {
  return {
    scope: 'papers',
    of: OF,
    key,
    ask,
    evidence: [],
    choices: choices.map(([value, words]) => ({ value, words })),
  };
}

function plainText(answer: string): string | null {
  return answer.length <= 200 && /\p{L}/u.test(answer) ? null : 'Expected words, at most 200 characters.';
}

function waterNames(said: string): readonly string[] | null {
  return listed(said, waterSlug);
}

function partNames(said: string): readonly string[] | null {
  return /^(none|no|nothing)$/i.test(said.trim()) ? [] : listed(said, partId);
}

/** Names with commas between them; null where there is none, or two would have the same id. */
function listed(said: string, idOf: (name: string) => string): readonly string[] | null {
  const names = said
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const isWhole = names.length > 0 && names.every((name) => plainText(name) === null);
  return isWhole && new Set(names.map(idOf)).size === names.length ? names : null;
}
