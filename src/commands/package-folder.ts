import { fileURLToPath } from 'node:url';

/** The program's own folder, whether it runs as it was written or compiled: both lie as deep below it. */
export const PACKAGE_FOLDER = fileURLToPath(new URL('../..', import.meta.url));
