import { createHmac } from 'node:crypto';
import { type AnglerName, otherForms, soundOf } from './angler-name.ts';
import { nearNames } from './near-names.ts';

/**
 * The keyed register: which reference stands for whom, without a name in it. Each row is one spelling that was met, as
 * digests under the club's key; without the key and a list of members nothing can be read from it.
 */
export interface RegisterRow {
  readonly ref: string;
  /** Digest of the whole name. */
  readonly full: string;
  /** Digest of the first letter and surname. */
  readonly initial: string;
  readonly surname: string;
  /** Digest of the surname's sound, so that a letter more or less is asked about. */
  readonly sound: string;
}

/** Whose name it is: known, told apart only by the club, or new. */
export type Resolved =
  | {
      readonly kind: 'known';
      readonly ref: string /** Said where the spelling was new. */;
      readonly because: string | null;
    }
  | { readonly kind: 'doubt'; readonly candidates: readonly string[]; readonly because: string }
  | { readonly kind: 'new' };

/** HMAC-SHA-256 (RFC 2104, FIPS 180-4) of a text under the club's key, told apart by kind; 16 hexadecimal digits. */
export function keyedDigest(key: Uint8Array, kind: string, text: string): string {
  return createHmac('sha256', key).update(`${kind}\u0000${text}`).digest('hex').slice(0, 16);
}

/** The row of a spelling. */
export function registerRow(key: Uint8Array, ref: string, name: AnglerName): RegisterRow {
  return {
    ref,
    full: keyedDigest(key, 'full', name.full),
    initial: keyedDigest(key, 'initial', name.initial),
    surname: keyedDigest(key, 'surname', name.surname),
    sound: keyedDigest(key, 'sound', soundOf(name.surname)),
  };
}

/**
 * Finds whose name it is. The whole name decides; then a known form of the first name; then an initial that only one
 * angler has. Anything else that resembles somebody is a doubt for the club, never a guess.
 */
export function resolveAngler(key: Uint8Array, rows: readonly RegisterRow[], name: AnglerName): Resolved {
  const own = registerRow(key, '', name);
  const refs = (match: (row: RegisterRow) => boolean): readonly string[] => [
    ...new Set(rows.filter(match).map(({ ref }) => ref)),
  ];
  const exact = refs(({ full }) => full === own.full);
  if (exact.length === 1) return { kind: 'known', ref: exact[0]!, because: null };
  if (exact.length > 1) return { kind: 'doubt', candidates: exact, because: 'the same name stands for several' };
  const forms = new Set(otherForms(name).map((form) => keyedDigest(key, 'full', form)));
  const byForm = refs(({ full }) => forms.has(full));
  const byInitial = refs(({ initial }) => initial === own.initial);
  if (byForm.length === 1 && byInitial.length <= 1) {
    return { kind: 'known', ref: byForm[0]!, because: 'a known form of the first name' };
  }
  if (byInitial.length === 1) {
    const only = keyedDigest(key, 'full', name.initial);
    const isWrittenByInitial = rows.some(({ ref, full }) => ref === byInitial[0] && full === only);
    if (name.isInitialOnly || (isWrittenByInitial && rows.filter(({ ref }) => ref === byInitial[0]).length === 1)) {
      return { kind: 'known', ref: byInitial[0]!, because: 'the only one with this initial and surname' };
    }
  }
  const alike = [...new Set([...byForm, ...byInitial, ...refs(({ surname }) => surname === own.surname)])];
  if (alike.length > 0) return { kind: 'doubt', candidates: alike, because: 'the same surname' };
  const sounding = refs(({ sound }) => sound === own.sound);
  if (sounding.length > 0) return { kind: 'doubt', candidates: sounding, because: 'a surname that sounds the same' };
  const near = new Set(rows.length === 0 ? [] : nearNames(name).map((other) => keyedDigest(key, 'full', other)));
  const slips = refs(({ full }) => near.has(full));
  if (slips.length > 0) return { kind: 'doubt', candidates: slips, because: 'the same name but for one letter' };
  return { kind: 'new' };
}

const CROCKFORD = '0123456789abcdefghjkmnpqrstvwxyz';

/**
 * A new reference, `a-` and eight characters of Crockford's base 32, drawn at random: not worked out from the name, so
 * that a lost key and a list of members cannot turn references back. Holds a digit, so that it never reads like a name.
 * @param draw gives eight random bytes for a try, the same ones for the same try of one run
 */
export function newReference(draw: (attempt: number) => Uint8Array, taken: ReadonlySet<string>): string {
  for (let attempt = 0; ; attempt++) {
    const ref = `a-${[...draw(attempt)].map((byte) => CROCKFORD[byte % 32]).join('')}`;
    if (/[0-9]/.test(ref) && !taken.has(ref)) return ref;
  }
}

const HEADER = 'ref,full,initial,surname,sound';
const ROW = /^[a-z0-9-]{2,32}(?:,[0-9a-f]{16}){4}$/;

/** The register as it is kept, rows in order so that the same register gives the same bytes. */
export function formatRegister(rows: readonly RegisterRow[]): string {
  const lines = rows.map(({ ref, full, initial, surname, sound }) => [ref, full, initial, surname, sound].join(','));
  return `${[HEADER, ...[...new Set(lines)].sort()].join('\n')}\n`;
}

/** Reads a kept register; the number of the first line that is none of it where it is damaged. */
export function readRegister(
  text: string,
): { readonly ok: true; readonly rows: readonly RegisterRow[] } | { readonly ok: false; readonly line: number } {
  const lines = text.replaceAll('\r\n', '\n').split('\n');
  if (lines.at(-1) === '') lines.pop();
  const wrong = lines.findIndex((line, index) => (index === 0 ? line !== HEADER : !ROW.test(line)));
  if (wrong !== -1 || lines.length === 0) return { ok: false, line: wrong + 1 };
  const rows = lines.slice(1).map((line) => {
    const [ref = '', full = '', initial = '', surname = '', sound = ''] = line.split(',');
    return { ref, full, initial, surname, sound };
  });
  return { ok: true, rows };
}
