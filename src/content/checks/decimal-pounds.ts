import type { Session } from '../../domain/session.ts';
import { formatWeight } from '../../domain/weight.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import type { PlacedRow } from '../read-rows.ts';
import { faultAt } from '../sources/source.ts';

const DECIMAL = /^\d+\.(\d{1,2})$/;
/** Scales that show decimal pounds show .16 to .99 soon enough. */
const FEWEST = 5;

/**
 * Bare decimals in a log of a venue that weighs in pounds, none with a fraction above .15: `12.14` is read as 12.14 lb, which
 * is 12 lb 2 oz, and was most likely meant as 12 lb 14 oz. Told once a file.
 */
export function checkDecimalPounds({ sessions, settings }: Content): readonly Fault[] {
  if (settings.units.weight !== 'lb') return [];
  const suspects = new Map<string, PlacedRow<Session>[]>();
  const cleared = new Set<string>();
  for (const row of sessions) {
    if (row.value.weightGrams === undefined) continue;
    const source = row.source();
    const fraction = DECIMAL.exec(source.writtenAt(['weight']) ?? '')?.[1];
    if (fraction === undefined) continue;
    if (Number(fraction) > 15) cleared.add(source.file);
    else {
      const rows = suspects.get(source.file);
      if (rows === undefined) suspects.set(source.file, [row]);
      else rows.push(row);
    }
  }
  return [...suspects].flatMap(([file, rows]) => {
    const [first] = rows;
    return first === undefined || rows.length < FEWEST || cleared.has(file)
      ? []
      : [suspicion(first, rows.length, settings.units)];
  });
}

function suspicion(row: PlacedRow<Session>, count: number, units: Content['settings']['units']): Fault {
  const source = row.source();
  const written = source.writtenAt(['weight']) ?? '';
  return faultAt(source, ['weight'], {
    rule: 'weight-decimal',
    found: `"${written}" and ${count - 1} more weights with a point and no fraction above .15`,
    expected: `pounds and ounces as ${written.replace('.', '-')}, if those were meant; as it stands it is read as ${formatWeight(row.value.weightGrams ?? 0, units)}`,
    mend: 'Write a hyphen between pounds and ounces. Decimal pounds may stay as they are.',
    severity: 'warning',
  });
}
