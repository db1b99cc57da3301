import { printsPaper } from './print/print-paper.ts';

/** `cards`: peg cards of A6, two to a side of A5, a PDF a water, out of the built guide. */
export const run = printsPaper('cards');
