import { editorSnippets } from '../schemas/editor-snippets.ts';
import { quoted } from '../typed-command.ts';

/** What a club's repository is written from. */
export interface RepositoryPlan {
  /** The venue folder, as it is named from the repository's top. */
  readonly venue: string;
  /** The version of the program the club starts with. */
  readonly version: string;
  /** A `package.json` that is there already; null where there is none. */
  readonly manifest: Readonly<Record<string, unknown>> | null;
}

/**
 * The files of a repository in which a club keeps its venue: what to install, what is never kept, and the steps by which any
 * build server checks and publishes.
 * @returns texts by path
 */
export function clubRepository({ venue, version, manifest }: RepositoryPlan): ReadonlyMap<string, string> {
  const given = (key: string) => (manifest?.[key] ?? {}) as Readonly<Record<string, string>>;
  const at = venue === 'content' ? '' : ` --venue ${quoted(venue)}`;
  const own = {
    name: 'our-venue-guide',
    private: true,
    ...manifest,
    engines: { node: '>=22.12', ...given('engines') },
    scripts: {
      venue: 'peg-atlas',
      check: `peg-atlas check${at}`,
      build: `peg-atlas build${at}`,
      start: `peg-atlas show${at}`,
      ...given('scripts'),
    },
    dependencies: { 'peg-atlas': version, ...given('dependencies') },
  };
  return new Map([
    ['package.json', `${JSON.stringify(own, null, 2)}\n`],
    ['.gitignore', GITIGNORE],
    ['.build/publish.yaml', workflow(at)],
    // Where editors look for what they offer while a record is written.
    ['.vscode/venue.code-snippets', editorSnippets()],
  ]);
}

const GITIGNORE = `node_modules/
dist/
# Ratings that were worked out before; a build server may keep them from one run to the next.
.cache/
# What papers meant, and the register of anglers: neither is for everybody who may read this repository.
*.import.yaml
*.key
*.anglers.csv
`;

const workflow = (
  at: string,
) => `# The steps by which a build server publishes this guide, as any of them can be told. Put them into the file your server reads.
# Run them after every change of the main branch, on a machine with Node 22.12 or newer.
image: node:24
cache: # keep this folder from one run to the next, under one name: it only saves time
  - .cache/
steps:
  - name: install
    run: npm ci
  - name: check # stops here with every fault, file and line
    run: npx peg-atlas check${at}
  - name: build # writes dist/ only when the guide is whole
    run: npx peg-atlas build${at}
publish:
  folder: dist/ # copy it to any static host; .nojekyll, _headers and 404.html lie in it
`;
