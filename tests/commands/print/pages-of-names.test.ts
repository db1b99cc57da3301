import { expect, it } from 'vitest';
import { pagesOfNames } from '../../../src/commands/print/pages-of-names.ts';

/** A page tree of two levels and three names, written by hand after ISO 32000-1, 7.7.3 and 12.3.2.3; a page's number in the file is not its place. */
const PDF = Buffer.from(`%PDF-1.4
9 0 obj
<</Type /Page
/Parent 20 0 R>>
endobj
3 0 obj
<</Type /Page
/Parent 20 0 R>>
endobj
4 0 obj
<</Type /Page
/Parent 21 0 R>>
endobj
20 0 obj
<</Type /Pages
/Count 2
/Kids [9 0 R 3 0 R]
/Parent 22 0 R>>
endobj
21 0 obj
<</Type /Pages
/Count 1
/Kids [4 0 R]
/Parent 22 0 R>>
endobj
22 0 obj
<</Type /Pages
/Count 3
/Kids [20 0 R 21 0 R]>>
endobj
23 0 obj
<</part-1 [3 0 R /XYZ 6 826.1 0]
/part-2 [4 0 R /XYZ 6 826.1 0]
/booklet-index [9 0 R /XYZ 6 400 0]>>
endobj
`);

it('counts pages in the order of the tree, at whatever depth', () => {
  expect(Object.fromEntries(pagesOfNames(PDF))).toEqual({ 'part-1': 2, 'part-2': 3, 'booklet-index': 1 });
});

it('knows nothing of a file that is written otherwise', () => {
  expect(pagesOfNames(Buffer.from('%PDF-1.7\n'))).toEqual(new Map());
});
