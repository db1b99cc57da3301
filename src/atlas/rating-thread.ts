import { parentPort } from 'node:worker_threads';
import { doTask } from '../ratings/rating-tasks.ts';
import { claimTask, type ThreadMessage, type ThreadWork } from './shared-tasks.ts';
import { workKeeper } from './work-keeper.ts';

/** The second thread of `rateInThreads`: takes tasks from the last on until none is left. */
parentPort!.on('message', ({ ground, tasks, claims, work }: ThreadWork) => {
  const keeper = workKeeper(work);
  const answer = (message: ThreadMessage) => parentPort!.postMessage(message);
  for (let task = tasks.length - 1; task >= 0; task--) {
    if (claimTask(claims, task)) answer({ task, result: doTask(ground, tasks[task]!, undefined, keeper) });
  }
  answer({ result: null, work: keeper.kept() });
});
