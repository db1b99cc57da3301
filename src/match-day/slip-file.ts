import { sha256Hex } from './even-numbers.ts';
import { isSlip, known, type Slip } from './slip.ts';

/** The one that is written: rows as lists, so that more of them fit a code, and what was fed and plumbed. */
const SLIP_FILE_FORMAT = 'peg-atlas-slip-2';
/** Written until November 2026: rows with their names, and nothing of feed and depths. */
const FIRST_FORMAT = 'peg-atlas-slip-1';
const ANY_FORMAT = 'peg-atlas-slip-';
const MAX_CHARACTERS = 60_000;

/** What may be wrong with a file, in words a person can act on. */
export type SlipRead = { readonly ok: true; readonly slip: Slip } | { readonly ok: false; readonly why: string };

/** Whether a text calls itself a slip. */
export function isSlipFile(text: string): boolean {
  return text.slice(0, 200).includes(`"${ANY_FORMAT}`);
}

/** The file's text, with a digest by which a slip of an editor is found out. */
export async function slipFileText(slip: Slip): Promise<string> {
  const body = asLists(slip);
  return JSON.stringify({ format: SLIP_FILE_FORMAT, check: await sha256Hex(JSON.stringify(body)), ...body });
}

/** Reads a slip that somebody handed over: nothing in it is trusted, and what it has besides is passed over. */
export async function readSlipFile(text: string): Promise<SlipRead> {
  if (text.length > MAX_CHARACTERS) return { ok: false, why: 'It is larger than any slip: this is some other file.' };
  let read: unknown;
  try {
    read = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return { ok: false, why: 'It was cut off or changed on the way: ask for it to be sent again.' };
  }
  const { format, check, ...body } = (read ?? {}) as Record<string, unknown>;
  if (format !== SLIP_FILE_FORMAT && format !== FIRST_FORMAT) {
    const isNewer = typeof format === 'string' && format.startsWith(ANY_FORMAT);
    return {
      ok: false,
      why: isNewer ? 'It is of a newer guide: update this program first.' : 'It is no slip of an angler.',
    };
  }
  const isFirst = format === FIRST_FORMAT;
  const slip = isFirst ? { ...body, fed: [], depths: [] } : fromLists(body);
  if (!isSlip(slip)) {
    return { ok: false, why: 'Something in it was changed so that it cannot be read: ask for it to be sent again.' };
  }
  if (check !== (await sha256Hex(JSON.stringify(isFirst ? asFirst(slip) : asLists(slip))))) {
    return { ok: false, why: 'It was changed since the phone handed it over: ask for it to be sent again.' };
  }
  return { ok: true, slip: known(slip) };
}

/** In the order the digest is of. */
function asFirst(slip: Slip): object {
  const { fed: _, depths: __, ...first } = known(slip);
  return first;
}

/** In the order the digest is of, rows as lists. */
function asLists(slip: Slip): object {
  const { caught, fed, depths, ...rest } = known(slip);
  return {
    ...rest,
    caught: caught.map(({ minute, part, grams }) => [minute, part, grams]),
    fed: fed.map(({ minute, what }) => [minute, what]),
    depths: depths.map(({ lineMetres, depthMetres }) => [lineMetres, depthMetres]),
  };
}

function fromLists({ caught, fed, depths, ...rest }: Record<string, unknown>): Record<string, unknown> {
  return {
    ...rest,
    caught: rowsOf(caught, ([minute, part, grams]) => ({ minute, part, grams })),
    fed: rowsOf(fed, ([minute, what]) => ({ minute, what })),
    depths: rowsOf(depths, ([lineMetres, depthMetres]) => ({ lineMetres, depthMetres })),
  };
}

function rowsOf(lists: unknown, row: (list: readonly unknown[]) => object): unknown {
  return Array.isArray(lists) ? lists.map((list) => (Array.isArray(list) ? row(list) : null)) : null;
}
