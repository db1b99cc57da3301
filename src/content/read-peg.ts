import type { Units } from '../domain/bag.ts';
import type { Peg } from '../domain/peg.ts';
import type { Fault } from './fault.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { pegSchema } from './schemas/peg-schema.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import { faultAt, type Placed, type Source } from './sources/source.ts';
import { shown } from './sources/text-place.ts';
import { fileStem } from './venue-files.ts';

/** Reads one peg record, `pegs/<water>/<peg>.md`. */
export function pegReader(units: Units): (file: string, text: string) => Reading<Placed<Peg> | null> {
  // A schema takes longer to make than a record to read.
  const schema = pegSchema(units);
  return (file, text) => {
    const { record, faults } = readMarkdownRecord(file, text);
    if (record === null) return reading(null, faults);
    const { source } = record;
    const body = readBody(record);
    const read = readFieldsLeniently(schema, source.value, source);
    const all = [...faults, ...read.faults, ...body.faults];
    if (read.value === null) return reading(null, all);
    const peg: Peg = { ...read.value, notes: body.notes, file };
    return reading({ value: peg, source }, [...all, ...nameFaults(peg, source)]);
  };
}

/** The record repeats the names of its file and folder: a copy made from a neighbour's record then shows itself. */
function nameFaults(peg: Peg, source: Source): readonly Fault[] {
  const [, folder] = source.file.split('/');
  const stem = fileStem(source.file);
  const faults: Fault[] = [];
  if (peg.peg !== stem) {
    faults.push(
      faultAt(source, ['peg'], {
        rule: 'peg-file-name',
        found: shown(peg.peg),
        expected: `"${stem}", the name of the file`,
        mend: 'Correct the peg, or rename the file.',
      }),
    );
  }
  if (peg.water !== folder) {
    faults.push(
      faultAt(source, ['water'], {
        rule: 'peg-folder',
        found: shown(peg.water),
        expected: `"${folder}", the name of the folder`,
        mend: 'Correct the water, or move the file.',
      }),
    );
  }
  return faults;
}
