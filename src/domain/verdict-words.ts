import { formatDay } from './day.ts';
import type { ClosedBy, ClosedVerdict, PegLimit, PegVerdict } from './peg-verdict.ts';

/** What stands where a closure has no reason on record: the readers of the folder ask for one. */
const NO_REASON = 'no reason is on record';

/** "Closed until 2 Dec 2026", "Closed since 2 Feb 2026": the first words of a closed peg, on every page that names it. */
export function closedHeadline({ since, until }: ClosedVerdict): string {
  if (until !== null) return `Closed until ${formatDay(until)}`;
  return since === null ? 'Closed' : `Closed since ${formatDay(since)}`;
}

/** Why a peg is closed, all of it and each once: "Below the 11 kV line; Boards off". */
export function closedReason({ causes }: ClosedVerdict): string {
  const told = causes.filter((cause) => !(cause.by === 'status' && repeats(cause.reason, causes)));
  // A reason written as a sentence keeps its full stop only where nothing follows.
  return [...new Set(told.map(causeWords))].join('; ').replaceAll('.; ', '; ');
}

/** Whether a record's reason says no more than the causes beside it: an intake writes down what it closes a peg for. */
function repeats(reason: string | undefined, causes: readonly ClosedBy[]): boolean {
  if (reason === undefined) return false;
  const written = causes.flatMap((cause) => {
    if (cause.by === 'platform') return [CLOSED_FOR_PLATFORM];
    if (cause.by === 'line') return [CLOSED_FOR_LINE];
    return cause.by === 'hazard' ? [closedForHazard(cause.hazard)] : [];
  });
  // The longest first: one may be the beginning of another.
  const left = written.sort((a, b) => b.length - a.length).reduce((rest, words) => rest.replace(words, ''), reason);
  return left !== reason && !/[\p{L}\p{N}]/u.test(left);
}

/** What an intake writes into a record as the reason for closing a peg. */
export const CLOSED_FOR_PLATFORM = 'The platform is unsafe: do not use it';
export const CLOSED_FOR_LINE = 'Inside the stand-off of an overhead line, as measured on the bank';

/** The same of a hazard: "Ice: along the reeds". */
export function closedForHazard({ name, place }: { readonly name: string; readonly place: string }): string {
  return `${name}: ${place}`;
}

/** "since 2 Feb 2026: the 11 kV line …", "until 2 Dec 2026: tree work", to stand behind the word closed. */
export function closedBecause(verdict: ClosedVerdict): string {
  const days = closedHeadline(verdict).replace(/^Closed ?/, '');
  return `${days === '' ? '' : `${days}: `}${closedReason(verdict)}`;
}

/** "Peg 14, closed (since 2 Feb 2026: …)": a peg's name for who cannot see its mark. */
export function pegLabel(peg: string, verdict: PegVerdict): string {
  return verdict.state === 'closed' ? `Peg ${peg}, closed (${closedBecause(verdict)})` : `Peg ${peg}`;
}

/** One thing that closes a peg, as the angler reads it. */
function causeWords(cause: ClosedBy): string {
  switch (cause.by) {
    case 'status':
      return cause.reason ?? NO_REASON;
    case 'notice':
      return cause.title;
    case 'platform':
      return `the platform must not be used (${cause.condition})`;
    case 'hazard':
      return `${cause.hazard.name}, ${cause.hazard.place}`;
    case 'line':
      return cause.line.metres === null
        ? `overhead line, ${cause.line.name}: nobody has measured how near`
        : `overhead line inside the stand-off, ${cause.line.name}`;
  }
}

/** What keeps a peg open only in part: "pole to 11 m, no cast", "Unsafe platform, the platform: kept open by the Secretary". */
export function limitWords(limit: PegLimit): string {
  if (limit.by === 'kept-open') {
    const { hazard, keptOpen } = limit;
    return `${hazard.name}, ${hazard.place}: kept in the draw by role: ${keptOpen.by}; why: ${keptOpen.why}`;
  }
  const { poleMetres: pole, castMetres: cast, sectorDegrees: sector } = limit.reach;
  return [
    ...(pole === undefined ? [] : [pole === 0 ? 'no pole' : `pole to ${pole} m`]),
    ...(cast === undefined ? [] : [cast === 0 ? 'no casting' : `no cast beyond ${cast} m`]),
    ...(sector === undefined ? [] : [`only within ${sector}° of the front`]),
  ].join(', ');
}
