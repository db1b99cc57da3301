import type { Units } from '../domain/bag.ts';
import {
  SHIPPED_INSPECTION,
  SHIPPED_NESTING_MONTHS,
  SHIPPED_RATING_RULES,
  SHIPPED_REACH,
  SHIPPED_RISK_BANDS,
  SHIPPED_STAND_OFF,
} from '../domain/shipped-settings.ts';
import { SHIPPED_THRESHOLDS } from '../domain/shipped-thresholds.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { settingsSchema, UnitsSchema } from './schemas/settings-schema.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import { faultOfFile, type Placed } from './sources/source.ts';
import { typed } from './typed-command.ts';
import type { VenueFiles } from './venue-files.ts';

const FILE = 'venue.md';

/** Stand in while `venue.md` cannot be read, so that the rest of the folder is read all the same. Never published. */
export const STAND_IN_SETTINGS: VenueSettings = {
  name: '',
  club: '',
  invented: false,
  guideDay: '9999-12-31',
  contacts: [],
  emergency: { number: '' },
  units: { length: 'm', weight: 'lb' },
  language: 'en',
  bagParts: [],
  features: [],
  standOff: SHIPPED_STAND_OFF,
  permittedReach: SHIPPED_REACH,
  inspection: SHIPPED_INSPECTION,
  riskBands: SHIPPED_RISK_BANDS,
  thresholds: SHIPPED_THRESHOLDS,
  ratingRules: SHIPPED_RATING_RULES,
  nestingMonths: SHIPPED_NESTING_MONTHS,
  rulesMarkdown: '',
};

/** Reads `venue.md`; null where it is missing or no settings can be made of it. */
export function readVenueSettings(files: VenueFiles): Reading<Placed<VenueSettings> | null> {
  const text = files.texts.get(FILE);
  if (text === undefined) return reading(null, files.unread.has(FILE) ? [] : [missing()]);
  const { record, faults } = readMarkdownRecord(FILE, text);
  if (record === null) return reading(null, faults);
  const { source, body } = record;
  const read = readFieldsLeniently(settingsSchema(unitsOf(source.value)), source.value, source);
  const all = [...faults, ...read.faults, ...readBody(record).faults];
  if (read.value === null) return reading(null, all);
  return reading({ value: { ...read.value, rulesMarkdown: body.trim() }, source }, all);
}

/** The units decide what the other bare numbers mean, so they are read first. */
function unitsOf(values: unknown): Units {
  const units = UnitsSchema.safeParse((values as { units?: unknown } | null | undefined)?.units);
  return units.success ? units.data : STAND_IN_SETTINGS.units;
}

function missing() {
  return faultOfFile(FILE, {
    rule: 'venue-missing',
    found: 'no such file',
    expected: 'venue.md with the name of the venue, its units and its emergency numbers',
    mend: `Write it, or begin a folder with: ${typed('start FOLDER')}`,
  });
}
