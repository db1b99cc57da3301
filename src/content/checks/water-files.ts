import type { Content } from '../content.ts';
import { didYouMean, listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { faultOfFile } from '../sources/source.ts';
import { typed } from '../typed-command.ts';
import { pathsBelow } from '../venue-files.ts';

/** Addresses the guide's own pages stand at: a water of that name would put two pages in one place. */
const TAKEN_NAMES: readonly string[] = [
  '_astro',
  'bank-round',
  'compare',
  'data',
  'due',
  'features',
  'notices',
  'paper',
  'photos',
  'register',
  'rules',
  'safety',
  'schema',
  'search',
  'workings',
];

/** Every water has a record and a map, and whatever is filed by water is filed under one that exists. */
export function checkWaterFiles({ files, known, waters }: Content): readonly Fault[] {
  const isThere = (path: string) => files.texts.has(path) || files.unread.has(path);
  const names = waters.map(({ id }) => id);
  const pairs = names.flatMap((id) =>
    [
      { path: `waters/${id}.md`, holds: 'its name, kind and datum' },
      { path: `waters/${id}.geojson`, holds: 'its outline' },
    ]
      .filter(({ path }) => !isThere(path))
      .map(({ path, holds }) =>
        faultOfFile(path, {
          rule: 'water-file',
          found: 'no such file',
          expected: `a file with ${holds}, since the folder has the other half of ${id}`,
          mend: 'Write it, or correct the name of the other file.',
        }),
      ),
  );
  if (names.length === 0) return [noWater()];
  const filed = new Map<string, string>();
  for (const path of pathsBelow(files, 'pegs', '.md')) {
    const folders = path.split('/').slice(0, -1);
    if (folders.length === 2) filed.set(folders.join('/'), path);
  }
  for (const folder of ['soundings', 'gauge']) {
    for (const path of pathsBelow(files, folder, '.csv')) filed.set(path.slice(0, path.lastIndexOf('.')), path);
  }
  const strays = [...filed].flatMap(([place, path]) => {
    const id = place.slice(place.indexOf('/') + 1);
    if (known.waters.has(id)) return [];
    return [
      faultOfFile(path, {
        rule: 'water-unknown',
        found: `the water ${id} in the path`,
        expected: `one of ${listed(names)}`,
        mend: didYouMean(id, names, `Write waters/${id}.md and waters/${id}.geojson, or move the file.`),
      }),
    ];
  });
  return [...pairs, ...strays, ...names.filter((id) => TAKEN_NAMES.includes(id)).map(takenName)];
}

function takenName(id: string): Fault {
  return faultOfFile(`waters/${id}.md`, {
    rule: 'water-name-taken',
    found: `water called ${id}`,
    expected: `another name: the guide has a page of its own at ${id}/`,
    mend: `Rename the water's files and folders, such as ${id}-water, and the water in its records and logs.`,
  });
}

function noWater(): Fault {
  return faultOfFile('waters', {
    rule: 'water-missing',
    found: 'no water',
    expected: 'a water: waters/<name>.md and waters/<name>.geojson',
    mend: `Write both; ${typed('start FOLDER')} shows how.`,
  });
}
