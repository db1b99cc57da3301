import { pegFacts } from '../../domain/peg-facts.ts';
import type { ClosedBy } from '../../domain/peg-verdict.ts';
import { pegVerdict } from '../../domain/peg-verdict.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Source } from '../sources/source.ts';

/**
 * A peg whose record says open is published as closed where its platform must not be used or a hazard closes it: the club
 * is told, so that nobody looks for the peg in the draw.
 */
export function checkClosedByRecord({ pegs, settings }: Content): readonly Fault[] {
  return pegs.flatMap(({ value: peg, source }) => {
    if (peg.status === 'closed') return [];
    // Overhead lines are the gate's, and closures by notice have a day of their own.
    const verdict = pegVerdict(pegFacts(peg, [], [], settings), settings.guideDay);
    if (verdict.state !== 'closed') return [];
    return verdict.causes.map((cause) => closedFault(`${peg.water}/${peg.peg}`, cause, source, peg.hazards));
  });
}

function closedFault(
  peg: string,
  cause: ClosedBy,
  source: Source,
  hazards: readonly { readonly kind: string; readonly place: string }[],
): Fault {
  const [path, why] = placeOf(cause, hazards);
  return faultAt(source, path, {
    rule: 'closed-by-record',
    severity: 'warning',
    found: `the peg ${peg} with status: open, published as closed: ${why}`,
    expected: 'status: closed, or a record that keeps it in the draw',
    mend:
      cause.by === 'hazard'
        ? 'Write status: closed with status-reason and status-since; cleared-on once it is gone; or kept-open: { on, by, why } by whoever decides that it stays in the draw.'
        : 'Write status: closed with status-reason and status-since, or the platform’s condition once it has been put right.',
  });
}

function placeOf(
  cause: ClosedBy,
  hazards: readonly { readonly kind: string; readonly place: string }[],
): readonly [FieldPath, string] {
  if (cause.by !== 'hazard') return [['platform', 'condition'], 'its platform must not be used'];
  const { kind, place, why } = cause.hazard;
  const index = hazards.findIndex((hazard) => hazard.kind === kind && hazard.place === place);
  const rule = why.rule === 'band' ? `its score is ${why.band}, out of the draw` : 'a hard rule';
  return [['hazards', index, 'kind'], `${kind} (${place}), ${rule}`];
}
