import type { MessagePort } from 'node:worker_threads';
import type { KeptWork } from '../ratings/kept-work.ts';
import type { RatedVenue } from '../ratings/rated-venue.ts';
import type { RatingTask, TaskGround, TaskResult } from '../ratings/rating-tasks.ts';

/** What a second thread is told: first the work, so that it begins what needs no ground, then the ground. */
export type ThreadOrder = { readonly work: ThreadWork } | { readonly ground: Omit<TaskGround, 'venue'> };

export interface ThreadWork {
  readonly venue: RatedVenue;
  readonly tasks: readonly RatingTask[];
  /** One number a task in memory that both threads see: 1 once somebody has taken it. */
  readonly claims: Int32Array;
  /** What an earlier run kept. */
  readonly before: KeptWork;
  /** Where it tells what it works on: read by a thread that is at work itself. */
  readonly progress: MessagePort;
}

/** What it answers: one task's result, or, when there is nothing left to take, what is to be kept of its work. */
export type ThreadMessage =
  | { readonly task: number; readonly result: TaskResult }
  | { readonly result: null; readonly work: KeptWork };

/** True for the one thread that takes the task. */
export function claimTask(claims: Int32Array, task: number): boolean {
  return Atomics.compareExchange(claims, task, 0, 1) === 0;
}
