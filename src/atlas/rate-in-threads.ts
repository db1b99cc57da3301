import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { KeptWork } from '../ratings/kept-work.ts';
import { beginRatings, finishRatings, type RateOptions, rateVenue } from '../ratings/rate-venue.ts';
import type { RatedVenue } from '../ratings/rated-venue.ts';
import { doTask, ratingTasks, type TaskGround, type TaskResult } from '../ratings/rating-tasks.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { claimTask, type ThreadMessage, type ThreadOrder, type ThreadWork } from './shared-tasks.ts';
import { threadCode } from './thread-code.ts';
import { workKeeper } from './work-keeper.ts';

interface ThreadOptions extends Omit<RateOptions, 'keeper'> {
  /** What an earlier run of this very code kept, whatever its log. */
  readonly work?: KeptWork;
  /** Given what this run has to keep. */
  readonly keepWork?: (work: KeptWork) => void;
}

/** What the second thread brought home. */
interface Brought {
  readonly results: ReadonlyMap<number, TaskResult>;
  readonly work: KeptWork;
}

/** A log with fewer sessions is rated before a thread has started. */
const WORTH_A_THREAD = 1500;
/** Of a log with more, two tables at once would need over a gigabyte. */
const TWICE_IN_MEMORY = 60_000;

/**
 * Rates a venue with the help of a second thread: the same bytes as `rateVenue`, in little more than half the time. This thread takes
 * the tasks from the first on, the other from the last on; whatever the other does not bring home is done here.
 */
export async function rateInThreads(
  venue: RatedVenue,
  { work: before = {}, keepWork, ...given }: ThreadOptions,
  threads = threadsFor(venue),
  code = threadCode('rating-thread'),
): Promise<Ratings> {
  const keeper = workKeeper(before);
  const options: RateOptions = { ...given, keeper };
  if (threads < 2) {
    const ratings = rateVenue(venue, options);
    keepWork?.(keeper.kept());
    return ratings;
  }
  const tasks = ratingTasks(venue);
  const claims = new Int32Array(new SharedArrayBuffer(4 * tasks.length));
  const helper = startHelper(code, given.progress);
  const progress = (what: string) => {
    helper.tell();
    given.progress?.(what);
  };
  try {
    helper.begin({ venue, tasks, claims, before });
    const begun = beginRatings(venue, { ...options, progress });
    const brought = helper.goOn(begun.ground);
    const results: (TaskResult | undefined)[] = [];
    tasks.forEach((task, i) => {
      if (claimTask(claims, i)) results[i] = doTask(begun.ground, task, progress, keeper);
    });
    const { results: ofHelper, work } = await brought;
    for (const [i, result] of ofHelper) results[i] = result;
    const all = tasks.map((task, i) => results[i] ?? doTask(begun.ground, task, options.progress, keeper));
    keepWork?.({ ...work, ...keeper.kept() });
    return finishRatings(venue, begun, all, options);
  } finally {
    await helper.stop();
  }
}

function threadsFor({ sessions }: RatedVenue): number {
  const isWorthIt = sessions.length >= WORTH_A_THREAD && sessions.length <= TWICE_IN_MEMORY;
  // Where several venues are rated at once, each is told its share.
  const share = Number(process.env.PEG_ATLAS_THREADS);
  return isWorthIt ? (share >= 1 ? share : availableParallelism()) : 1;
}

/** Far more than its share of any log that is rated by two: without a limit it would let garbage lie for longer. */
const HELPER_LIMITS = { maxOldGenerationSizeMb: 384, maxYoungGenerationSizeMb: 24 };

/** One that fails brings nothing. */
function startHelper(code: string, progress?: (what: string) => void) {
  const worker = new Worker(code, { resourceLimits: HELPER_LIMITS });
  const { port1: told, port2: teller } = new MessageChannel();
  const results = new Map<number, TaskResult>();
  let kept: KeptWork = {};
  const isDone = new Promise<void>((resolve) => {
    worker.on('message', (message: ThreadMessage) => {
      if (message.result !== null) {
        results.set(message.task, message.result);
        return;
      }
      kept = message.work;
      resolve();
    });
    worker.on('error', () => resolve());
    worker.on('exit', () => resolve());
  });
  const order = (what: ThreadOrder, moved: MessagePort[] = []) => worker.postMessage(what, moved);
  return {
    begin: (work: Omit<ThreadWork, 'progress'>): void => order({ work: { ...work, progress: teller } }, [teller]),
    /** Passes on what the other has begun since: its messages come by themselves only once this thread rests. */
    tell: (): void => {
      for (let next = receiveMessageOnPort(told); next !== undefined; next = receiveMessageOnPort(told)) {
        progress?.(next.message as string);
      }
    },
    goOn: async ({ dnw, asked, start }: TaskGround): Promise<Brought> => {
      order({ ground: { dnw, asked, start } });
      // From the time this thread has nothing left to do but to wait.
      setImmediate(() => told.on('message', (what: string) => progress?.(what)));
      await isDone;
      return { results, work: kept };
    },
    stop: async (): Promise<void> => {
      told.close();
      await worker.terminate();
    },
  };
}
