import { typed } from '../content/typed-command.ts';
import { capitalised } from '../domain/capitalised.ts';

interface CommandHelp {
  /** The command with what it takes. */
  readonly usage: string;
  /** Its own options and what each is for. */
  readonly options: readonly (readonly [option: string, words: string])[];
  /** One that works as it stands, behind the command's name. */
  readonly example: string;
}

const YES = ['--yes', 'write without being asked'] as const;
const DRY_RUN = ['--dry-run', 'show what would change and write nothing'] as const;
const JSON_OUT = ['--json', 'print one document for programs'] as const;
const ADDRESS = [
  '--address ADDRESS',
  'where the guide will stand: https://club.example/guide/, or only /guide/',
] as const;
const OUT = ['--out FOLDER', 'the folder of the guide, instead of dist'] as const;
const PORT = ['--port N', 'the port to listen on'] as const;
const PRINTING = [
  ['--to FOLDER', 'the folder that what is printed goes into, instead of this one'],
  ['--browser PATH', 'the Chromium, Chrome or Edge that prints, where none is found'],
  OUT,
] as const;
const KEYS = ['--keys FOLDER', 'where the key and register of anglers are, outside the venue folder'] as const;
const ANSWERS = ['--answers FILE', 'answers to what would be asked'] as const;

/** What each command takes, for `COMMAND --help`. */
const HELP: Readonly<Record<string, CommandHelp>> = {
  check: { usage: 'check', options: [JSON_OUT], example: 'check --venue content' },
  build: {
    usage: 'build',
    options: [OUT, ADDRESS, ['--quiet', 'print nothing but faults'], JSON_OUT],
    example: 'build --address https://club.example/guide/',
  },
  serve: { usage: 'serve', options: [OUT, PORT], example: 'serve --port 8080' },
  show: { usage: 'show', options: [OUT, ADDRESS, PORT], example: 'show --venue content' },
  cards: { usage: 'cards [WATER…]', options: PRINTING, example: 'cards kiln-pool --to printed' },
  plates: { usage: 'plates [WATER…]', options: PRINTING, example: 'plates kiln-pool --to printed' },
  booklet: { usage: 'booklet', options: PRINTING, example: 'booklet --to printed' },
  dev: { usage: 'dev', options: [PORT], example: 'dev --venue content' },
  ratings: {
    usage: 'ratings',
    options: [
      ['--bag PART', 'the worth of one part of the bag'],
      ['--month M', 'of one month, 1 to 12'],
      ['--everything', 'every table'],
      JSON_OUT,
    ],
    example: 'ratings --bag carp --month 8',
  },
  plan: {
    usage: 'plan MATCH',
    options: [
      ['--water WATER', 'a water of a new match; may be given again'],
      ['--entries N', 'how many will fish'],
      ['--sections N', 'how many sections'],
      ['--apart LENGTH', 'least distance between pegs'],
      ['--name NAME', 'what the match is called'],
      ['--anew', 'plan again though a plan is there'],
      ['--mend', 'put others in for pegs that have closed since, and move as little else as can be'],
      YES,
      JSON_OUT,
    ],
    example: 'plan 2026-12-06-winter-three --anew',
  },
  league: { usage: 'league NAME', options: [JSON_OUT], example: 'league 2026-winter' },
  intake: {
    usage: 'intake FILE…',
    options: [
      YES,
      ['--keep-folder', 'where both differ, keep what the folder says'],
      ['--take-round', 'where both differ, take what the round says'],
      ['--without WHAT', 'leave a part of it out; may be given again'],
      ['--close-inside', 'close pegs that a line measured on the round puts inside the stand-off'],
      ['--keep-open WHO', 'leave a peg open: "kiln-pool/9=Secretary: why"'],
      KEYS,
    ],
    example: 'intake round-2026-11-20.json',
  },
  import: {
    usage: 'import places|results|rules|soundings FILE…',
    options: [ANSWERS, KEYS, YES, JSON_OUT],
    example: 'import results winter-league.xlsx',
  },
  repeg: {
    usage: 'repeg WATER RANGE SHIFT --from DAY',
    options: [
      ['--from DAY', 'the first day of the new numbers'],
      ['--shift N', 'the shift, where it begins with a minus'],
      DRY_RUN,
      YES,
    ],
    example: 'repeg kiln-pool 10-18 +1 --from 2026-03-01',
  },
  retire: {
    usage: 'retire WATER/PEG --from DAY --why TEXT',
    options: [
      ['--from DAY', 'the first day without it'],
      ['--why TEXT', 'the reason, as it will be read'],
      DRY_RUN,
      YES,
    ],
    example: 'retire kiln-pool/9 --from 2026-03-01 --why "The bank has gone"',
  },
  upgrade: { usage: 'upgrade', options: [DRY_RUN, YES], example: 'upgrade --dry-run' },
  anglers: {
    usage: 'anglers who NAME | merge REF REF | forget REF',
    options: [KEYS, YES],
    example: 'anglers forget a-7k2m9q4x',
  },
  start: {
    usage: 'start FOLDER',
    options: [
      ANSWERS,
      ['--repo', 'write what a repository needs beside the folder too'],
      ['--example', 'write two example pegs and ask nothing'],
      ['--day YYYY-MM-DD', 'the day of the data, instead of today'],
    ],
    example: 'start my-venue',
  },
  add: {
    usage: 'add water NAME | add peg WATER NUMBERS',
    options: [
      ['--pegs NUMBERS', 'of a new water: how many, or which: "1-20, 22"'],
      ['--facing BEARING', 'what one peg faces: 48 or NE; worked out from the shore where left out'],
      ['--at POSITION', 'where one peg is: 52.75126,-0.05481 or "TF 3127 1880"'],
      ANSWERS,
      YES,
    ],
    example: 'add peg kiln-pool 25-27',
  },
  'safety-texts': { usage: 'safety-texts', options: [JSON_OUT], example: 'safety-texts --json' },
  schema: { usage: 'schema', options: [['--out FOLDER', 'where the files go']], example: 'schema --out schemas' },
  version: { usage: 'version', options: [JSON_OUT], example: 'version' },
};

/** What a command takes, with an example; null where nothing is told of it. */
export function commandHelp(word: string, summary: string): string | null {
  const help = Object.hasOwn(HELP, word) ? HELP[word] : undefined;
  if (help === undefined) return null;
  const options = [...help.options, ['--venue FOLDER', 'the venue folder, instead of content'] as const];
  const width = Math.max(...options.map(([option]) => option.length)) + 2;
  return [
    `Usage: ${typed(`${help.usage} [options]`)}`,
    '',
    `${capitalised(summary)}.`,
    '',
    ...options.map(([option, words]) => `  ${option.padEnd(width)}${words}`),
    '',
    `Example: ${typed(help.example)}`,
  ].join('\n');
}
