import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { type RatedVenue, ratedVenue } from '../ratings/rated-venue.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { cacheFolder } from './cache-folder.ts';
import { keptRatings, type LoadRatingsOptions, loadRatings } from './ratings-cache.ts';
import { threadCode } from './thread-code.ts';

/** What the thread is given. */
export interface BackgroundWork {
  readonly venue: RatedVenue;
  readonly folder: string;
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
  // Found out here and now: while the thread begins, the pages may have the program stand elsewhere.
  const folder = resolve(options.folder ?? cacheFolder());
  const known = await keptRatings(venue, folder);
  if (known !== null) return { ratings: Promise.resolve(known) };
  options.signal?.throwIfAborted();
  const ratings = inThread({ venue: ratedVenue(venue), folder }, options, code).then((found) => {
    options.signal?.throwIfAborted();
    return found ?? loadRatings(venue, { ...options, folder });
  });
  // Whoever asks for them is told what went wrong; before that nobody may be listening.
  ratings.catch(() => undefined);
  return { ratings };
}

function inThread(work: BackgroundWork, options: BackgroundOptions, code: string): Promise<Ratings | null> {
  const worker = new Worker(code, { workerData: work });
  options.signal?.addEventListener('abort', () => void worker.terminate(), { once: true });
  return new Promise((done) => {
    worker.on('message', (message: BackgroundMessage) => {
      if ('ratings' in message) done(message.ratings);
      else options.progress?.(message.progress);
    });
    worker.on('error', () => done(null));
    worker.on('exit', () => done(null));
  });
}
