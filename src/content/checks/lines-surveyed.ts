import { linesSurveyOf } from '../../domain/lines-survey.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';

/** A map without a line says nothing about the sky above it until somebody states who looked, when and from what. */
export function checkLinesSurveyed({ waters, settings }: Content): readonly Fault[] {
  return waters.flatMap(({ id, record }) => {
    if (record === null || linesSurveyOf(record.value, settings) !== null) return [];
    return [
      faultAt(record.source, ['lines-surveyed'], {
        rule: 'lines-surveyed',
        severity: 'warning',
        found: `no survey of the overhead lines at ${id}`,
        expected:
          'the day they were looked for, by which role, and from what; every sheet of this water says that it is missing',
        mend: 'Have them surveyed and write lines-surveyed: { on: 2026-03-03, by: Bailiff, how: walked with the network operator’s plan } here, or in venue.md for all waters.',
      }),
    ];
  });
}
