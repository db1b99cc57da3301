import { availableParallelism } from 'node:os';
import { join, sep } from 'node:path';
import { Worker } from 'node:worker_threads';
import { beginRatings, finishRatings, type RateOptions, rateVenue } from '../ratings/rate-venue.ts';
import type { RatedVenue } from '../ratings/rated-venue.ts';
import { doTask, ratingTasks, type TaskResult } from '../ratings/rating-tasks.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { projectRoot } from './project-root.ts';
import { claimTask, type ThreadMessage, type ThreadWork } from './shared-tasks.ts';

/** A log with fewer sessions is rated before a thread has started. */
const WORTH_A_THREAD = 1500;
/** Of a log with more, two tables at once would need over a gigabyte. */
const TWICE_IN_MEMORY = 20_000;

/**
 * Rates a venue with the help of a second thread: the same bytes as `rateVenue`, in little more than half the time. This thread takes
 * the tasks from the first on, the other from the last on; whatever the other does not bring home is done here.
 */
export async function rateInThreads(
  venue: RatedVenue,
  options: RateOptions,
  threads = threadsFor(venue),
  code = threadCode(projectRoot()),
): Promise<Ratings> {
  if (threads < 2) return rateVenue(venue, options);
  const helper = startHelper(code);
  try {
    const begun = beginRatings(venue, options);
    const tasks = ratingTasks(venue);
    const claims = new Int32Array(new SharedArrayBuffer(4 * tasks.length));
    const brought = helper.help({ ground: begun.ground, tasks, claims });
    const results: (TaskResult | undefined)[] = [];
    tasks.forEach((task, i) => {
      if (claimTask(claims, i)) results[i] = doTask(begun.ground, task, options.progress);
    });
    for (const [i, result] of await brought) results[i] = result;
    const all = tasks.map((task, i) => results[i] ?? doTask(begun.ground, task, options.progress));
    return finishRatings(venue, begun, all, options);
  } finally {
    await helper.stop();
  }
}

function threadsFor({ sessions }: RatedVenue): number {
  const isWorthIt = sessions.length >= WORTH_A_THREAD && sessions.length <= TWICE_IN_MEMORY;
  return isWorthIt ? availableParallelism() : 1;
}

/** Where the second thread's code lies: of a package the compiled file, since Node strips no types of what is installed. */
function threadCode(root: string): string {
  return root.split(sep).includes('node_modules')
    ? join(root, 'lib', 'atlas', 'rating-thread.js')
    : join(root, 'src', 'atlas', 'rating-thread.ts');
}

/** Started before there is work, so that its code is loaded by then. One that fails brings nothing. */
function startHelper(code: string) {
  const worker = new Worker(code);
  const brought = new Map<number, TaskResult>();
  const isDone = new Promise<void>((resolve) => {
    worker.on('message', (message: ThreadMessage) => {
      if (message.result === null) resolve();
      else brought.set(message.task, message.result);
    });
    worker.on('error', () => resolve());
    worker.on('exit', () => resolve());
  });
  return {
    help: async (work: ThreadWork): Promise<ReadonlyMap<number, TaskResult>> => {
      worker.postMessage(work);
      await isDone;
      return brought;
    },
    stop: () => worker.terminate(),
  };
}
