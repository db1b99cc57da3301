import { parentPort } from 'node:worker_threads';
import { doTask, needsGround, type TaskGround } from '../ratings/rating-tasks.ts';
import { claimTask, type ThreadMessage, type ThreadOrder, type ThreadWork } from './shared-tasks.ts';
import { type RecordingKeeper, workKeeper } from './work-keeper.ts';

/** The second thread of `rateInThreads`: takes tasks from the last on until none is left, at first those that need no ground. */
let given: { readonly work: ThreadWork; readonly keeper: RecordingKeeper } | null = null;
parentPort!.on('message', (order: ThreadOrder) => {
  if ('work' in order) {
    given = { work: order.work, keeper: workKeeper(order.work.before) };
    take({ dnw: null, asked: {}, start: null }, (task) => !needsGround(task));
  } else {
    take(order.ground, () => true);
    answer({ result: null, work: given!.keeper.kept() });
  }
});

function take(ground: Omit<TaskGround, 'venue'>, isWanted: (task: ThreadWork['tasks'][number]) => boolean): void {
  const { work, keeper } = given!;
  const { venue, tasks, claims, progress } = work;
  for (let at = tasks.length - 1; at >= 0; at--) {
    const task = tasks[at]!;
    if (!isWanted(task) || !claimTask(claims, at)) continue;
    answer({ task: at, result: doTask({ venue, ...ground }, task, (what) => progress.postMessage(what), keeper) });
  }
}

function answer(message: ThreadMessage): void {
  parentPort!.postMessage(message);
}
