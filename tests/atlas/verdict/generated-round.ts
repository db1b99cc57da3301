import fc from 'fast-check';
import { errorsOf, newErrors, withChanges } from '../../../src/content/intake/faults-after.ts';
import { folderFiles } from '../../../src/content/intake/folder-files.ts';
import { type IntakePlan, planIntake } from '../../../src/content/intake/plan-intake.ts';
import { readVenue } from '../../../src/content/read-venue.ts';
import { recordBase } from '../../../src/content/round-file/record-version.ts';
import type { HazardFinding, PegFinding, PlaceFinding, RoundFile } from '../../../src/content/round-file/round-file.ts';
import type { VenueFiles } from '../../../src/content/venue-files.ts';
import { addDays, type Day } from '../../../src/domain/day.ts';
import { pegKey } from '../../../src/domain/peg.ts';
import type { Venue } from '../../../src/domain/venue.ts';
import { roundOf } from '../../commands/intake/venue-on-disk.ts';
import { FILE, type FileChange, smallVenue } from '../../content/small-venue.ts';

export const WATER = 'mill-pond';
export const ROUND_PEGS = ['1', '2', '3', '4'] as const;
const GUIDE_DAY: Day = '2026-11-21';
const FOUND_ON: Day = '2026-11-02';

/** A folder as it was when the bailiff set out, the round as handed over, and who keeps which peg open. */
export interface Walked {
  readonly files: VenueFiles;
  readonly round: RoundFile;
  readonly keepOpen: ReadonlySet<string>;
}

/** What of a peg's record matters here. */
interface BaseRecord {
  readonly isClosed: boolean;
  readonly platform: 'sound' | 'unsafe: a post gone' | null;
  readonly hazards: readonly string[];
}

const PLACES_OF_HAZARDS: Readonly<Record<string, string>> = {
  'algae-scum': 'in the bay',
  'thin-ice': 'along the reeds',
  slippery: 'the steps',
};

const record: fc.Arbitrary<BaseRecord> = fc.record({
  isClosed: fc.boolean(),
  platform: fc.constantFrom('sound', 'unsafe: a post gone', null),
  hazards: fc.subarray(Object.keys(PLACES_OF_HAZARDS)),
});

function recordText(peg: string, { isClosed, platform, hazards }: BaseRecord): string {
  const lines = [
    `peg: "${peg}"`,
    `water: ${WATER}`,
    `position: { lat: 52.74999, lng: ${-0.0509 + 0.0002 * Number(peg)} }`,
    'facing: 0',
    ...(isClosed ? ['status: closed', 'status-reason: Boards rotten', 'status-since: 2026-10-01'] : ['status: open']),
    ...(platform === null ? [] : [`platform: { kind: timber, condition: "${platform}", inspected-on: ${FOUND_ON} }`]),
    ...(hazards.length === 0 ? [] : ['hazards:']),
    ...hazards.map(
      (kind) =>
        `  - { kind: ${kind}, place: ${PLACES_OF_HAZARDS[kind]}, severity: 2, likelihood: 2, found-on: ${FOUND_ON} }`,
    ),
  ];
  return `---\n${lines.join('\n')}\n---\n`;
}

const level = fc.constantFrom(1, 2, 3, 4, 5) as fc.Arbitrary<1 | 2 | 3 | 4 | 5>;
const found: fc.Arbitrary<HazardFinding> = fc.record({
  did: fc.constant('found' as const),
  kind: fc.constantFrom('algae-scum', 'thin-ice', 'unsafe-platform', 'wasps-bees', 'overhead-line', 'fallen-tree'),
  place: fc.constantFrom('left of the platform', 'behind the peg'),
  severity: level,
  likelihood: level,
});
/** "Gone", with who decided and why, or by a mere tap. */
const gone = fc.record({ kind: fc.constantFrom(...Object.keys(PLACES_OF_HAZARDS)), isDecided: fc.boolean() });

const pegFinding = fc.record(
  {
    status: fc.constantFrom('open', 'closed'),
    until: fc.integer({ min: 0, max: 20 }).map((days) => addDays(GUIDE_DAY, days)),
    platform: fc.constantFrom('sound', 'unsafe: the deck gives'),
    lineDistanceMetres: fc.integer({ min: 1, max: 200 }),
    found: fc.array(found, { maxLength: 2 }),
    gone: fc.array(gone, { maxLength: 1 }),
    isKeptOpen: fc.boolean(),
  },
  { requiredKeys: ['found', 'gone'] },
);

const placeFinding = fc.record(
  {
    hazards: fc.array(
      found.filter(({ kind }) => kind !== 'unsafe-platform' && kind !== 'overhead-line'),
      { maxLength: 1 },
    ),
    closing: fc.record(
      {
        reason: fc.constant('Netting'),
        until: fc.integer({ min: 0, max: 9 }).map((days) => addDays(GUIDE_DAY, days)),
      },
      { requiredKeys: ['reason'] },
    ),
  },
  { requiredKeys: ['hazards'] },
);

/** A round of the day of the guide or before it, over records in any state, with a line on the map or none. */
export const walkedRounds: fc.Arbitrary<Walked> = fc
  .record({
    records: fc.tuple(...ROUND_PEGS.map(() => record)),
    pegs: fc.tuple(...ROUND_PEGS.map(() => fc.option(pegFinding))),
    ofWater: fc.option(placeFinding),
    atGate: fc.option(found.filter(({ kind }) => kind === 'fallen-tree')),
    hasMappedLine: fc.boolean(),
    daysBefore: fc.integer({ min: 0, max: 6 }),
  })
  .map(({ records, pegs, ofWater, atGate, hasMappedLine, daysBefore }): Walked => {
    const texts = ROUND_PEGS.map((peg, index) => recordText(peg, records[index]!));
    const changes: Record<string, FileChange> = {
      [FILE.map]: (text) => {
        const named = text.replace('"properties":{"kind":"gate"', '"id":"road-gate","properties":{"kind":"gate"');
        return hasMappedLine ? named : named.replace(/^.*"overhead-line".*\n/m, '');
      },
      [FILE.events]: null,
      [FILE.sessions]: null,
      'pegs/mill-pond/10.md': null,
      'soundings/mill-pond.csv': null,
      'rounds/2026-11-12-k7q2.csv': null,
      ...Object.fromEntries(ROUND_PEGS.map((peg, index) => [`pegs/${WATER}/${peg}.md`, texts[index]!])),
    };
    const places: PlaceFinding[] = [
      ...(ofWater === null ? [] : [{ water: WATER, ...ofWater }]),
      ...(atGate === null ? [] : [{ water: WATER, place: 'road-gate', hazards: [atGate] }]),
    ];
    return {
      files: smallVenue(changes),
      round: roundOf({
        version: 2,
        day: addDays(GUIDE_DAY, -daysBefore),
        by: 'Bailiff',
        pegs: ROUND_PEGS.flatMap((peg, index): PegFinding[] => {
          const finding = pegs[index];
          if (finding == null) return [];
          const { found: news, gone: taps, isKeptOpen: _, until, ...rest } = finding;
          return [
            {
              water: WATER,
              peg,
              ...recordBase(texts[index]!),
              ...rest,
              ...(rest.status === 'closed' ? { reason: 'The bank has slipped', ...(until && { until }) } : {}),
              hazards: [...news, ...taps.filter(({ kind }) => records[index]!.hazards.includes(kind)).map(clearing)],
            },
          ];
        }),
        ...(places.length === 0 ? {} : { places }),
      }),
      keepOpen: new Set(
        ROUND_PEGS.filter((_, index) => pegs[index]?.isKeptOpen === true).map((peg) => pegKey(WATER, peg)),
      ),
    };
  });

function clearing({ kind, isDecided }: { readonly kind: string; readonly isDecided: boolean }): HazardFinding {
  return {
    did: 'cleared',
    kind,
    place: PLACES_OF_HAZARDS[kind]!,
    foundOn: FOUND_ON,
    severity: 2,
    likelihood: 2,
    ...(isDecided ? { by: 'Bailiff', why: 'Not seen for seven days' } : {}),
  };
}

/** Takes a round in as the command does, with the round's word where the folder says otherwise; null where it is refused. */
export function takenIn({
  files,
  round,
  keepOpen,
}: Walked): { readonly venue: Venue; readonly plan: IntakePlan } | null {
  const plan = (close: ReadonlySet<string>) =>
    planIntake(folderFiles('', files), [{ file: 'round.txt', round, photos: new Map() }], {
      today: addDays(GUIDE_DAY, 1),
      without: new Set(),
      keepOpen: new Map([...keepOpen].map((key) => [key, { by: 'Secretary', why: 'fished from the bank beside it' }])),
      close,
      choose: () => 'take-round',
    });
  const first = plan(new Set());
  if (first.faults.length > 0) throw new Error(JSON.stringify(first.faults));
  const broken = newErrors(errorsOf(files), errorsOf(withChanges(files, first.files)));
  const inside = broken.filter(({ rule }) => rule === 'stand-off' || rule === 'stand-off-recorded');
  const last = inside.length === 0 ? first : plan(new Set(inside.map(({ file }) => file.slice(5, -3))));
  const { venue } = readVenue(withChanges(files, last.files));
  return venue === null ? null : { venue, plan: last };
}
