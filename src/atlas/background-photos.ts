import { workerData } from 'node:worker_threads';
import { makePhotoCopies } from './published-photos.ts';

/** The thread of `photosInBackground`. */
await makePhotoCopies(workerData as readonly string[]);
