import { withoutFormulaGuard } from '../sources/formula-guard.ts';
import { text } from './fields.ts';

/** Any text in a cell: the apostrophe that keeps a spreadsheet from running it is no part of it. */
export const cellText = (description: string) => text(description).transform(withoutFormulaGuard);
