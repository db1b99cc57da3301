import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultOfFile } from '../sources/source.ts';

/** Names that Windows keeps for devices, whatever stands behind a dot, and characters it allows in no name (Microsoft, "Naming Files, Paths, and Namespaces"). */
const DEVICE = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(?:\.|$)/i;
const REFUSED = /[<>:"|?*\\]|[. ]$/;

/** A folder that cannot be copied to a Windows machine loses a record there without a word: a name it refuses is told. */
export function checkPortableNames({ files }: Content): readonly Fault[] {
  const paths = [...files.texts.keys(), ...[...files.photos.keys()].map((photo) => `photos/${photo}`)];
  return [...refusedNames(paths), ...sameButForCapitals(paths)];
}

function refusedNames(paths: readonly string[]): readonly Fault[] {
  return paths.flatMap((path) => {
    const name = path.split('/').find((part) => DEVICE.test(part) || REFUSED.test(part));
    if (name === undefined) return [];
    return [
      faultOfFile(path, {
        rule: 'file-name-windows',
        found: `the name ${JSON.stringify(name)}`,
        expected: 'a name that every system can write',
        mend: 'Give it another name: Windows cannot hold this one, and a copy of the folder there would be without it.',
        severity: 'warning',
      }),
    ];
  });
}

/** Windows and macOS take two names that differ in capitals alone for one: a copy there would hold one of the two files. */
function sameButForCapitals(paths: readonly string[]): readonly Fault[] {
  const first = new Map<string, string>();
  return paths.flatMap((path) => {
    const other = first.get(path.toLowerCase());
    if (other === undefined) {
      first.set(path.toLowerCase(), path);
      return [];
    }
    return [
      faultOfFile(path, {
        rule: 'file-name-capitals',
        found: `a name that differs from ${other} in capitals alone`,
        expected: 'names that every system tells apart',
        mend: 'Rename one of the two: a copy of the folder on Windows or macOS would be without the other.',
        severity: 'warning',
      }),
    ];
  });
}
