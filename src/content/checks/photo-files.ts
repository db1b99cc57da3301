import type { Content } from '../content.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** Every picture a record names lies below `photos/`. */
export function checkPhotoFiles({ pegs, files }: Content): readonly Fault[] {
  const missing = (source: Source, path: FieldPath, file: string): readonly Fault[] => {
    if (files.photos.has(file) || files.unread.has(`photos/${file}`)) return [];
    return [
      faultAt(source, path, {
        rule: 'photo-missing',
        found: shown(file),
        expected: 'a file below photos/',
        mend: didYouMean(file, files.photos.keys(), 'Put the picture there, or take the entry out.'),
      }),
    ];
  };
  return pegs.flatMap(({ value: peg, source }) => [
    ...peg.photos.flatMap(({ file }, index) => missing(source, ['photos', index, 'file'], file)),
    ...peg.hazards.flatMap(({ photo }, index) =>
      photo === undefined ? [] : missing(source, ['hazards', index, 'photo'], photo),
    ),
  ]);
}
