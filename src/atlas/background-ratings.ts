import { parentPort, workerData } from 'node:worker_threads';
import { loadRatings } from './ratings-cache.ts';
import type { BackgroundMessage, BackgroundWork } from './ratings-in-background.ts';

/** The thread of `ratingsInBackground`: tells what it works on, then the ratings. */
const { venue, folder } = workerData as BackgroundWork;
const tell = (message: BackgroundMessage) => parentPort!.postMessage(message);

const ratings = await loadRatings(venue, { folder, progress: (progress) => tell({ progress }) });
tell({ ratings });
