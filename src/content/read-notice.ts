import type { Notice } from '../domain/notice.ts';
import { datedNameFaults } from './dated-file-name.ts';
import { readRecord } from './read-record.ts';
import type { Reading } from './reading.ts';
import { NoticeSchema } from './schemas/notice-schema.ts';
import type { Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Reads `notices/<date>-<slug>.md`. */
export function readNotice(file: string, text: string): Reading<Placed<Notice> | null> {
  const ofName = datedNameFaults(file, 'notice-name', '2026-11-02-boards-off');
  return readRecord(
    file,
    text,
    NoticeSchema,
    (fields, markdown) => ({ ...fields, id: fileStem(file), markdown }),
    ofName,
  );
}
