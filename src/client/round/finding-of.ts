import type {
  DatedField,
  GaugeFinding,
  HazardFinding,
  NoticeFinding,
  PegFinding,
  PlaceFinding,
} from '../../content/round-file/round-file.ts';
import { byMeasure } from '../../domain/clearance-measures.ts';
import { isDay } from '../../domain/day.ts';
import { parseLength, parseSignedLength } from '../../domain/length.ts';
import type { Parsed } from '../../domain/parsed.ts';
import { hazardKind } from '../../domain/risk.ts';
import {
  type FoundDraft,
  type GaugeDraft,
  type LookedAtDraft,
  type PegDraft,
  type PegField,
  PLACE_MARK,
} from './draft.ts';

/** Something typed that cannot be handed over as it stands. */
export interface Problem {
  readonly water: string;
  /** Empty for the gauge. */
  readonly peg: string;
  /** Id of the control it is about, within the form. */
  readonly field: string;
  readonly sentence: string;
}

/** A finding, and what of the draft is still to be put right; with problems the finding is not to be handed over. */
export interface Found<T> {
  readonly finding: T;
  readonly problems: readonly Problem[];
}

/** What a round file calls the fields that carry a day of their own. */
export const DATED_AS: Partial<Record<PegField | 'at', DatedField>> = {
  status: 'status',
  platform: 'platform',
  ...byMeasure(({ key, field }) => [key, field]),
  'snag-removed': 'snagRemoved',
  cut: 'cut',
  'line-distance': 'lineDistanceMetres',
  at: 'at',
  note: 'note',
};

const LENGTH_FIELDS = {
  ...byMeasure(({ key, field, name, maxMetres }) => [key, [field, name, maxMetres] as const]),
  'line-distance': ['lineDistanceMetres', 'distance to the line', 500],
} as const;

/** Turns what was typed at a peg into a finding. */
export function pegFindingOf(draft: PegDraft, unit: 'm' | 'ft'): Found<PegFinding> {
  const problems: Problem[] = [];
  const wrong = (field: string, sentence: string): void => {
    problems.push({ water: draft.water, peg: draft.peg, field, sentence });
  };
  const typed = (field: PegField): string => (draft.fields[field] ?? '').trim();

  const lengths: Record<string, number> = {};
  for (const [field, [name, words, most]] of Object.entries(LENGTH_FIELDS)) {
    const text = typed(field as PegField);
    if (text === '') continue;
    const length = parseLength(text.replace(/^(\d+),(\d+)/, '$1.$2'), unit);
    if (length.ok && length.value > 0 && length.value <= most) lengths[name] = toTenthMillimetre(length.value);
    else wrong(field, `The ${words} “${text}” is not a length: ${expectation(length, most)}.`);
  }
  const status = typed('status');
  if (status === 'closed' && typed('reason') === '' && draft.known.status !== 'closed') {
    wrong('reason', 'A closed peg needs the reason, for the angler who has drawn it.');
  }
  const until = lastDayOf(draft, 'until', wrong);
  if (status === 'closed' && until !== undefined && typed('reason') === '') {
    wrong('reason', 'A peg closed for a time needs the reason, for the angler who has drawn it.');
  }
  const method = typed('line-method');
  if ('lineDistanceMetres' in lengths && method === '') {
    wrong('line-method', 'Say how the distance to the line was measured: tape, wheel or laser.');
  }
  const text = (field: PegField, name: string) => (typed(field) === '' ? {} : { [name]: typed(field) });
  const finding: PegFinding = {
    water: draft.water,
    peg: draft.peg,
    record: draft.record,
    known: draft.known,
    ...(draft.seenOn === undefined ? {} : { day: draft.seenOn }),
    ...daysOf(draft),
    ...(status === 'open' || status === 'closed' ? { status } : {}),
    ...(status === 'closed' ? text('reason', 'reason') : {}),
    ...(status === 'closed' && until !== undefined ? { until } : {}),
    ...text('platform', 'platform'),
    ...lengths,
    ...(typed('snag-removed') === '' ? {} : { snagRemoved: true }),
    ...(typed('cut') === '' ? {} : { cut: true }),
    ...('lineDistanceMetres' in lengths && method !== '' ? { lineMethod: method as 'tape' } : {}),
    hazards: hazardsOf(draft, wrong),
    ...(draft.at === undefined ? {} : { at: draft.at }),
    ...text('note', 'note'),
  };
  return { finding, problems };
}

/** What was noted at a place that is no peg: its finding, and the notice that was written there. */
export interface PlaceFound {
  readonly place: PlaceFinding;
  readonly notice: NoticeFinding | null;
}

/** Turns what was typed at a place that is no peg, or of the whole water, into findings. */
export function placeFindingOf(draft: PegDraft): Found<PlaceFound> {
  const problems: Problem[] = [];
  const wrong = (field: string, sentence: string): void => {
    problems.push({ water: draft.water, peg: draft.peg, field, sentence });
  };
  const typed = (field: PegField): string => (draft.fields[field] ?? '').trim();
  const place = draft.peg.slice(PLACE_MARK.length);
  const day = draft.seenOn === undefined ? {} : { day: draft.seenOn };
  const until = lastDayOf(draft, 'until', wrong);
  const closes = typed('closing') !== '';
  if (closes && typed('reason') === '')
    wrong('reason', 'A closed water needs the reason, for the angler who comes to it.');
  const noticeUntil = lastDayOf(draft, 'notice-until', wrong);
  const [title, text] = [typed('notice-title'), typed('notice-text')];
  if (title === '' && text !== '') wrong('notice-title', 'A notice needs a title: the line that is read first.');
  const kind = typed('notice-kind');
  return {
    finding: {
      place: {
        water: draft.water,
        ...(place === '' ? {} : { place }),
        ...day,
        ...(typed('kit') === '' ? {} : { kit: typed('kit') as 'in-place' }),
        hazards: hazardsOf(draft, wrong),
        ...(closes ? { closing: { reason: typed('reason'), ...(until === undefined ? {} : { until }) } } : {}),
        ...(typed('note') === '' ? {} : { note: typed('note') }),
      },
      notice:
        title === ''
          ? null
          : {
              water: draft.water,
              pegs: [],
              kind: kind === 'works' || kind === 'news' ? kind : 'hazard',
              title,
              ...(text === '' ? {} : { text }),
              ...(noticeUntil === undefined ? {} : { until: noticeUntil }),
              ...day,
            },
    },
    problems,
  };
}

type Wrong = (field: string, sentence: string) => void;

function lastDayOf(draft: PegDraft, field: 'until' | 'notice-until', wrong: Wrong): string | undefined {
  const text = (draft.fields[field] ?? '').trim();
  if (text === '') return undefined;
  if (isDay(text) && (draft.seenOn === undefined || text >= draft.seenOn)) return text;
  wrong(field, `The last day “${text}” is not a day from today on.`);
  return undefined;
}

/** The day of each field that was noted on another day than the peg was first seen. */
function daysOf({ days = {}, seenOn }: PegDraft): { readonly days?: NonNullable<PegFinding['days']> } {
  const dated = Object.entries(days).flatMap(([field, day]) => {
    const name = DATED_AS[field as keyof typeof DATED_AS];
    return name === undefined || day === undefined || day === seenOn ? [] : [[name, day] as const];
  });
  return dated.length === 0 ? {} : { days: Object.fromEntries(dated) };
}

function hazardsOf(draft: PegDraft, wrong: Wrong): HazardFinding[] {
  return [
    ...draft.lookedAt.flatMap((hazard, index) => lookedAtHazard(hazard, `known-${index}`, wrong)),
    ...draft.found.map((hazard) => foundHazard(hazard, wrong)),
  ];
}

function lookedAtHazard(draft: LookedAtDraft, id: string, wrong: Wrong): HazardFinding[] {
  const { did, kind, place, foundOn, day } = draft;
  if (did === '') return [];
  const { severityNow = '', likelihoodNow = '' } = draft;
  const [control, by, why] = [draft.control?.trim() ?? '', draft.by?.trim() ?? '', draft.why?.trim() ?? ''];
  const level = (chosen: string, before: number) => Number(chosen === '' ? before : chosen) as 1;
  const what = `${hazardKind(kind).name}, ${place}`;
  if (did === 'worsened' && (severityNow === '' || likelihoodNow === '')) {
    wrong(id, `${what}: say how bad and how likely it is now.`);
  }
  if (did === 'controlled' && control === '') wrong(id, `${what}: say what was done about it.`);
  if (did === 'cleared' && hazardKind(kind).hardRule && (by === '' || why === '')) {
    wrong(id, `${what} is a hard rule: say who decided that it is gone (a role), and why.`);
  }
  const after = did === 'controlled' ? { severityAfter: severityNow, likelihoodAfter: likelihoodNow } : {};
  return [
    {
      did,
      kind,
      place,
      foundOn,
      severity: did === 'worsened' ? level(severityNow, draft.severity) : (draft.severity as 1),
      likelihood: did === 'worsened' ? level(likelihoodNow, draft.likelihood) : (draft.likelihood as 1),
      ...Object.fromEntries(
        Object.entries(after)
          .filter(([, chosen]) => chosen !== '')
          .map(([name, chosen]) => [name, Number(chosen)]),
      ),
      ...(did === 'controlled' && control !== '' ? { control } : {}),
      ...(did === 'cleared' && by !== '' ? { by } : {}),
      ...(did === 'cleared' && why !== '' ? { why } : {}),
      ...(did === 'cleared' && draft.photo !== undefined ? { photo: draft.photo } : {}),
      ...(day === undefined ? {} : { day }),
    },
  ];
}

function foundHazard(draft: FoundDraft, wrong: Wrong): HazardFinding {
  if (draft.kind === '') wrong(`${draft.id}-kind`, 'A hazard found: choose what it is.');
  if (draft.place.trim() === '') wrong(`${draft.id}-place`, 'A hazard found: say where it is.');
  if (draft.severity === '') wrong(`${draft.id}-severity`, 'A hazard found: say how bad it could be, 1 to 5.');
  if (draft.likelihood === '') wrong(`${draft.id}-likelihood`, 'A hazard found: say how likely it is, 1 to 5.');
  return {
    did: 'found',
    kind: draft.kind,
    place: draft.place.trim(),
    ...(draft.action.trim() === '' ? {} : { action: draft.action.trim() }),
    severity: Number(draft.severity) as 1,
    likelihood: Number(draft.likelihood) as 1,
    ...(draft.at === undefined ? {} : { at: draft.at }),
    ...(draft.photo === undefined ? {} : { photo: draft.photo }),
    ...(draft.day === undefined ? {} : { day: draft.day }),
  };
}

/** Turns what was typed of a water's gauge into a reading; null where nothing was. */
export function gaugeFindingOf(draft: GaugeDraft, unit: 'm' | 'ft'): Found<GaugeFinding> | null {
  const [levelText, temperatureText] = [draft.level.trim(), draft.temperature.trim()];
  if (levelText === '' && temperatureText === '') return null;
  const problems: Problem[] = [];
  const wrong = (field: string, sentence: string): void => {
    problems.push({ water: draft.water, peg: '', field, sentence });
  };
  const level = parseSignedLength(levelText.replace(/(\d+),(\d+)/, '$1.$2'), unit);
  if (levelText !== '' && !(level.ok && Math.abs(level.value) <= 20)) {
    wrong(
      'level',
      `The level “${levelText}” is not a level: a length above or below the datum, such as 0.12 or -0.05.`,
    );
  }
  const temperature = Number(temperatureText.replace(',', '.').replace(/\s*°?\s*C$/i, ''));
  const isTemperature = Number.isFinite(temperature) && temperature >= -2 && temperature <= 40;
  if (temperatureText !== '' && !isTemperature) {
    wrong(
      'temperature',
      `The water temperature “${temperatureText}” is not a temperature: degrees Celsius, such as 9.5.`,
    );
  }
  return {
    finding: {
      water: draft.water,
      ...(draft.day === undefined ? {} : { day: draft.day }),
      ...(levelText !== '' && level.ok ? { levelMetres: toTenthMillimetre(level.value) } : {}),
      ...(temperatureText !== '' && isTemperature ? { waterDegreesC: temperature } : {}),
    },
    problems,
  };
}

/** Feet become metres with more digits than anybody measured. */
function toTenthMillimetre(metres: number): number {
  return Math.round(metres * 10_000) / 10_000;
}

function expectation(length: Parsed<number>, most: number): string {
  return length.ok ? `more than 0 and at most ${most} m` : `${length.expected}`;
}
