/** Something an angler fed, and when. */
export interface Fed {
  /** Minutes since the all in. */
  readonly minute: number;
  /** In a few words: "hemp, 13 m". */
  readonly what: string;
}

/** What is fed is said in few words (our own choice). */
export const MAX_FED_TEXT = 30;

/** A cell of the log that says what was fed and when: `0:05 hemp; 1:30 pellet`. */
export const FED_CELL = /^\d{1,2}:[0-5]\d [^;]{1,30}(?:; \d{1,2}:[0-5]\d [^;]{1,30})*$/;

/** What was fed as the log writes it, in order of time. What was fed before the all in stands at 0:00. */
export function fedCell(fed: readonly Fed[]): string {
  return fed
    .map(({ minute, what }) => ({ minute, what: plain(what) }))
    .filter(({ what }) => what !== '')
    .sort((a, b) => a.minute - b.minute)
    .map(({ minute, what }) => `${clock(Math.max(0, Math.floor(minute)))} ${what}`)
    .join('; ');
}

/** Words with nothing in them that parts one feed from the next, or is not seen. */
export function plain(what: string): string {
  return what.replace(/[;\s\p{C}]+/gu, ' ').trim();
}

function clock(minutes: number): string {
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
