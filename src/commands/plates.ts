import { printsPaper } from './print/print-paper.ts';

/** `plates`: peg plates of A5 for the posts, a PDF a water, out of the built guide. */
export const run = printsPaper('plates');
