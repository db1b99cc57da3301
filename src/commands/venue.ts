#!/usr/bin/env node
import { cacheFolder } from '../atlas/cache-folder.ts';
import { didYouMean } from '../content/did-you-mean.ts';
import { typed } from '../content/typed-command.ts';
import { commandHelp } from './command-help.ts';
import { EXIT, processIo, type RunCommand } from './command-io.ts';
import { keepCompiledCode } from './compiled-code.ts';
import { diskTrouble } from './disk-trouble.ts';
import { GuideBesideItsPlace } from './guide-folder/replace-guide.ts';
import { tooOldNode } from './node-version.ts';
import { UsageError } from './read-arguments.ts';

interface Entry {
  readonly summary: string;
  readonly load: () => Promise<{ readonly run: RunCommand }>;
  /** Whether Astro runs in it. */
  readonly writesPages?: true;
}

/** Every command by its word; each is loaded only when called. */
const COMMANDS: Readonly<Record<string, Entry>> = {
  check: {
    summary: 'read the venue folder and show every fault',
    load: () => import('./check.ts'),
  },
  build: {
    summary: 'check, rate and write the guide into dist',
    load: () => import('./build.ts'),
    writesPages: true,
  },
  serve: {
    summary: 'serve the built guide on this machine',
    load: () => import('./serve.ts'),
  },
  show: {
    summary: 'build the guide and serve it',
    load: () => import('./show.ts'),
    writesPages: true,
  },
  cards: {
    summary: 'print peg cards for the pocket, a PDF a water: cards kiln-pool',
    load: () => import('./cards.ts'),
  },
  plates: {
    summary: 'print peg plates for the posts, a PDF a water: plates kiln-pool',
    load: () => import('./plates.ts'),
  },
  booklet: {
    summary: 'print the whole venue as one PDF with contents and index',
    load: () => import('./booklet.ts'),
  },
  dev: {
    summary: 'serve the guide and follow the folder as it is edited',
    load: () => import('./dev.ts'),
    writesPages: true,
  },
  ratings: {
    summary: 'print the seasonal worth',
    load: () => import('./ratings.ts'),
  },
  plan: {
    summary: 'choose the pegs of a match and cut fair sections: plan 2026-12-06-winter-three',
    load: () => import('./plan.ts'),
  },
  league: {
    summary: 'print the standings of a league, by reference: league 2026-winter',
    load: () => import('./league.ts'),
  },
  intake: {
    summary: 'take bank rounds into the venue folder',
    load: () => import('./intake.ts'),
  },
  import: {
    summary: 'read a club’s own papers into the venue folder: import places, results, rules or soundings FILE…',
    load: () => import('./import.ts'),
  },
  repeg: {
    summary: 'number a run of pegs anew: repeg WATER 10-18 +1 --from DAY',
    load: () => import('./repeg.ts'),
  },
  retire: {
    summary: 'take a peg out of the guide for good: retire WATER/PEG --from DAY --why TEXT',
    load: () => import('./retire.ts'),
  },
  upgrade: {
    summary: 'rewrite an older venue folder to the newest format',
    load: () => import('./upgrade.ts'),
  },
  anglers: {
    summary: 'who is who in the log: anglers who NAME, merge REF REF, forget REF',
    load: () => import('./anglers.ts'),
  },
  start: {
    summary: 'ask what a club knows and write a first venue folder',
    load: () => import('./start.ts'),
  },
  add: {
    summary: 'add a water or pegs: add water NAME, add peg WATER NUMBERS',
    load: () => import('./add.ts'),
  },
  'safety-texts': {
    summary: 'print every safety text with its source',
    load: () => import('./safety-texts.ts'),
  },
  schema: {
    summary: 'write the JSON Schema files for editors',
    load: () => import('./schema.ts'),
  },
  version: {
    summary: 'say which version this is, and which folders it reads',
    load: () => import('./version.ts'),
  },
};

function usage(): string {
  const rows = Object.entries(COMMANDS).map(([word, { summary }]) => `  ${word.padEnd(14)}${summary}`);
  return [
    `Usage: ${typed('COMMAND [options]')}`,
    '',
    ...rows,
    '',
    'COMMAND --help tells its own options. Exit codes: 0 done, 1 faults in the folder or papers, 2 usage, 3 the program’s own.',
    'Every command takes --venue FOLDER (or the variable VENUE_DIR); the folder is content unless named.',
  ].join('\n');
}

async function main(): Promise<number> {
  const io = processIo();
  const tooOld = tooOldNode(process.versions.node);
  if (tooOld !== null) {
    io.printError(tooOld);
    return EXIT.usage;
  }
  const [word, ...args] = process.argv.slice(2);
  if (word === undefined || word === 'help' || [word, ...args].includes('--help')) {
    const asked = word === 'help' ? args[0] : word;
    const known = asked !== undefined && Object.hasOwn(COMMANDS, asked) ? COMMANDS[asked] : undefined;
    io.print((asked !== undefined && known !== undefined ? commandHelp(asked, known.summary) : null) ?? usage());
    return word === undefined ? EXIT.usage : EXIT.clean;
  }
  const command = Object.hasOwn(COMMANDS, word) ? COMMANDS[word] : undefined;
  if (command === undefined) {
    io.printError(`Unexpected command "${word}". ${didYouMean(word, Object.keys(COMMANDS), `\n\n${usage()}`)}`);
    return EXIT.usage;
  }
  keepCompiledCode(cacheFolder(), command.writesPages ? 'threads alone' : 'all');
  try {
    return await (await command.load()).run(args, io);
  } catch (error) {
    if (error instanceof UsageError) {
      io.printError(`${error.message}\n\n${commandHelp(word, command.summary) ?? usage()}`);
      return EXIT.usage;
    }
    if (io.environment.PEG_ATLAS_TRACE !== undefined) throw error;
    if (error instanceof GuideBesideItsPlace) {
      io.printError(error.message);
      return EXIT.faults;
    }
    const disk = diskTrouble(error);
    if (disk !== null) {
      io.printError(disk);
      return EXIT.faults;
    }
    io.printError(
      `A fault of the program itself, not of your files: ${error instanceof Error ? error.message : error}`,
    );
    io.printError(
      'Nothing was written. Run it again with PEG_ATLAS_TRACE=1 and send what it prints to the maintainers.',
    );
    return EXIT.program;
  }
}

/** A reader that went away (a closed pipe) is no fault of ours. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await main();
