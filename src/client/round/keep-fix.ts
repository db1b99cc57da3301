import type { Fix } from '../../content/round-file/round-file.ts';
import { fixWords, isGoodFix, locate, poorFixWords } from './locate.ts';

/** What a control that keeps a position works on. */
export interface FixControl {
  readonly say: (sentence: string) => void;
  /** Shown while a poor fix waits for a word; kept only when it is tapped. */
  readonly anyway: HTMLButtonElement;
  readonly keep: (fix: Fix) => void;
  /** Told of every fix with its time, kept or not: the clock is held against it. */
  readonly onFix: (takenAt: number) => void;
}

/** Asks for the position and keeps it, unless it is so poor that it has to be asked for. Returns whether it was kept. */
export async function keepFix({ say, anyway, keep, onFix }: FixControl): Promise<boolean> {
  anyway.hidden = true;
  say('Looking for the position…');
  const located = await locate();
  if (typeof located === 'string') {
    say(located);
    return false;
  }
  onFix(located.takenAt);
  if (!isGoodFix(located.at)) {
    say(poorFixWords(located.at));
    anyway.hidden = false;
    anyway.onclick = () => {
      anyway.hidden = true;
      keep(located.at);
      say(fixWords(located.at));
    };
    return false;
  }
  keep(located.at);
  say(fixWords(located.at));
  return true;
}
