import type { Units } from '../domain/bag.ts';
import type { Day } from '../domain/day.ts';
import type { Peg } from '../domain/peg.ts';
import type { Fault } from './fault.ts';
import { pegOfFields } from './peg-of-fields.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { pegSchema } from './schemas/peg-schema.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import { faultAt, type Placed, type Source } from './sources/source.ts';
import { shown } from './sources/text-place.ts';
import { fileStem } from './venue-files.ts';

/** Nothing that has begun is over, where no day of the guide is known. */
const NO_LIMIT: Day = '9999-12-31';

/** Reads one peg record, `pegs/<water>/<peg>.md`, as it stands on the guide's day. */
export function pegReader(
  units: Units,
  guideDay: Day = NO_LIMIT,
): (file: string, text: string) => Reading<Placed<Peg> | null> {
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
    const { peg: number, id, retired } = read.value;
    if (retired === undefined ? number === undefined : id === undefined) {
      return reading(null, [...all, retired === undefined ? numberMissing(source) : idMissing(source)]);
    }
    const name = retired === undefined ? number! : id!;
    const peg = pegOfFields(read.value, name, body.notes, file, guideDay);
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
      faultAt(source, [peg.retired === undefined ? 'peg' : 'id'], {
        rule: 'peg-file-name',
        found: shown(peg.peg),
        expected: `"${stem}", the name of the file`,
        mend:
          peg.retired === undefined
            ? 'Correct the peg, or rename the file.'
            : 'A retired stand has no number: name its file after its id.',
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

function numberMissing(source: Source): Fault {
  return faultAt(source, ['peg'], {
    rule: 'field-missing',
    found: 'nothing',
    expected: "the peg's name: letters, digits and hyphens",
    mend: 'Add it.',
  });
}

function idMissing(source: Source): Fault {
  return faultAt(source, ['id'], {
    rule: 'retired-id',
    found: 'a retired stand without an id',
    expected: 'id, by which the log still knows it',
    mend: 'Give it an id such as s-7k2q04xv, and name its file after it.',
  });
}
