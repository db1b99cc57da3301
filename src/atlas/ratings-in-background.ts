import { Worker } from 'node:worker_threads';
import { type RatedVenue, ratedVenue } from '../ratings/rated-venue.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { keptRatings, type LoadRatingsOptions, loadRatings } from './ratings-cache.ts';
import { threadCode } from './thread-code.ts';

/** What the thread is given. */
export interface BackgroundWork {
  readonly venue: RatedVenue;
  readonly folder?: string;
}

/** What the thread tells on its way, and at its end. */
export type BackgroundMessage = { readonly progress: string } | { readonly ratings: Ratings };

interface BackgroundOptions extends LoadRatingsOptions {
  /** Ends the work where nobody wants it any more: the ratings are then refused. */
  readonly signal?: AbortSignal;
}

/** Ratings that were kept, or that a thread is at work on. */
export interface BegunRatings {
  readonly ratings: Promise<Ratings>;
}

/**
 * `loadRatings` in a thread of its own, so that this one goes on with what needs no ratings. Where the thread fails, the ratings are
 * worked out here.
 * @returns once the thread is at work: what keeps this one busy is better begun after that
 */
export async function ratingsInBackground(
  venue: RatedVenue,
  options: BackgroundOptions = {},
  code: string = threadCode('background-ratings'),
): Promise<BegunRatings> {
  const known = await keptRatings(venue, options.folder);
  if (known !== null) return { ratings: Promise.resolve(known) };
  options.signal?.throwIfAborted();
  const ratings = inThread(ratedVenue(venue), options, code).then((found) => {
    options.signal?.throwIfAborted();
    return found ?? loadRatings(venue, options);
  });
  // Whoever asks for them is told what went wrong; before that nobody may be listening.
  ratings.catch(() => undefined);
  return { ratings };
}

function inThread(venue: RatedVenue, options: BackgroundOptions, code: string): Promise<Ratings | null> {
  const work: BackgroundWork = { venue, ...(options.folder === undefined ? {} : { folder: options.folder }) };
  const worker = new Worker(code, { workerData: work });
  options.signal?.addEventListener('abort', () => void worker.terminate(), { once: true });
  return new Promise((resolve) => {
    worker.on('message', (message: BackgroundMessage) => {
      if ('ratings' in message) resolve(message.ratings);
      else options.progress?.(message.progress);
    });
    worker.on('error', () => resolve(null));
    worker.on('exit', () => resolve(null));
  });
}
