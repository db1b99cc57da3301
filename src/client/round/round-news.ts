/** What one tab tells the others of this phone: that a draft of a round, or the round itself, has changed. */
export interface RoundNews {
  readonly ref: string;
  readonly water?: string;
  readonly peg?: string;
}

/** A reference is drawn at random, and two guides of one host could draw the same. */
const CHANNEL = `peg-atlas-rounds ${globalThis.document?.body.dataset.guideBase ?? '/'}`;

/**
 * Tells other tabs of changes, and is told of theirs. A browser without channels is told when its page is looked at again.
 * @param onNews called with what changed; with the reference alone where that is not known
 * @returns what tells the others
 */
export function roundNews(ref: string, onNews: (news: RoundNews) => void): (news: RoundNews) => void {
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') onNews({ ref });
  });
  if (typeof BroadcastChannel !== 'function') return () => undefined;
  const channel = new BroadcastChannel(CHANNEL);
  channel.addEventListener('message', ({ data }: MessageEvent<RoundNews>) => {
    if (data.ref === ref) onNews(data);
  });
  return (news) => channel.postMessage(news);
}
