import type { GaugeFinding, HazardFinding, PegFinding } from '../../content/round-file/round-file.ts';
import { parseLength, parseSignedLength } from '../../domain/length.ts';
import type { Parsed } from '../../domain/parsed.ts';
import type { FoundDraft, GaugeDraft, PegDraft, PegField } from './draft.ts';

/** Something typed that cannot be handed over as it stands. */
export interface Problem {
  readonly water: string;
  /** Empty for the gauge. */
  readonly peg: string;
  /** Id of the control it is about, within the form. */
  readonly field: string;
  readonly sentence: string;
}

/** A finding, and what of the draft is still to be mended; with problems the finding is not to be handed over. */
export interface Found<T> {
  readonly finding: T;
  readonly problems: readonly Problem[];
}

const LENGTH_FIELDS = {
  'clear-width': ['clearWidthMetres', 'clear width', 100],
  'lowest-branch': ['lowestBranchMetres', 'lowest branch', 50],
  'path-width': ['pathWidthMetres', 'path width', 20],
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
    else wrong(field, `The ${words} “${text}” is no length: ${expectation(length, most)}.`);
  }
  const status = typed('status');
  if (status === 'closed' && typed('reason') === '' && draft.known.status !== 'closed') {
    wrong('reason', 'A closed peg needs the reason, for the angler who has drawn it.');
  }
  const method = typed('line-method');
  const text = (field: PegField, name: string) => (typed(field) === '' ? {} : { [name]: typed(field) });
  const finding: PegFinding = {
    water: draft.water,
    peg: draft.peg,
    record: draft.record,
    known: draft.known,
    ...(status === 'open' || status === 'closed' ? { status } : {}),
    ...(status === 'closed' ? text('reason', 'reason') : {}),
    ...text('platform', 'platform'),
    ...lengths,
    ...(typed('snag-removed') === '' ? {} : { snagRemoved: true }),
    ...(typed('cut') === '' ? {} : { cut: true }),
    ...('lineDistanceMetres' in lengths && method !== '' ? { lineMethod: method as 'tape' } : {}),
    hazards: [...lookedAt(draft), ...draft.found.map((hazard) => foundHazard(hazard, wrong))],
    ...(draft.at === undefined ? {} : { at: draft.at }),
    ...text('note', 'note'),
  };
  return { finding, problems };
}

function lookedAt({ lookedAt: hazards }: PegDraft): HazardFinding[] {
  return hazards.flatMap(({ did, severity, likelihood, ...hazard }) =>
    did === '' ? [] : [{ ...hazard, did, severity: severity as 1, likelihood: likelihood as 1 }],
  );
}

function foundHazard(draft: FoundDraft, wrong: (field: string, sentence: string) => void): HazardFinding {
  if (draft.kind === '') wrong(`${draft.id}-kind`, 'A hazard found needs its kind.');
  if (draft.place.trim() === '') wrong(`${draft.id}-place`, 'A hazard found needs the place in the swim.');
  if (draft.severity === '') wrong(`${draft.id}-severity`, 'A hazard found needs how bad it could be, 1 to 5.');
  if (draft.likelihood === '') wrong(`${draft.id}-likelihood`, 'A hazard found needs how likely it is, 1 to 5.');
  return {
    did: 'found',
    kind: draft.kind,
    place: draft.place.trim(),
    ...(draft.action.trim() === '' ? {} : { action: draft.action.trim() }),
    severity: Number(draft.severity) as 1,
    likelihood: Number(draft.likelihood) as 1,
    ...(draft.at === undefined ? {} : { at: draft.at }),
    ...(draft.photo === undefined ? {} : { photo: draft.photo }),
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
    wrong('level', `The level “${levelText}” is no level: a length above or below the datum, such as 0.12 or -0.05.`);
  }
  const temperature = Number(temperatureText.replace(',', '.').replace(/\s*°?\s*C$/i, ''));
  const isTemperature = Number.isFinite(temperature) && temperature >= -2 && temperature <= 40;
  if (temperatureText !== '' && !isTemperature) {
    wrong('temperature', `The water temperature “${temperatureText}” is none: degrees Celsius, such as 9.5.`);
  }
  return {
    finding: {
      water: draft.water,
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
