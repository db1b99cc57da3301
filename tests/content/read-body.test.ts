import { expect, test } from 'vitest';
import { FILE, faultsOf, messagesOf, smallCheckedVenue } from './small-venue.ts';

const withBody = (body: string) => ({
  [FILE.peg]: (text: string) => text.replace(/\n---\n[\s\S]*$/, `\n---\n${body}`),
});

test('splits the text at its second-level headings', () => {
  const [peg] = smallCheckedVenue(
    withBody(
      '\nFirst.\n\n## Winter\n\nCold.\n\n### Deep\n\nDeeper.\n\n## April to June\nFine.\n\n## Getting there\n\nBy the gate.\n\nAll year\n--------\n\nSame.\n',
    ),
  ).pegs;
  expect(peg?.notes).toEqual([
    { heading: '', months: [], markdown: 'First.' },
    { heading: 'Winter', months: [12, 1, 2], markdown: 'Cold.\n\n### Deep\n\nDeeper.' },
    { heading: 'April to June', months: [4, 5, 6], markdown: 'Fine.' },
    { heading: 'Getting there', months: [], markdown: 'By the gate.' },
    { heading: 'All year', months: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], markdown: 'Same.' },
  ]);
});

test('takes no heading from a block of code', () => {
  const [peg] = smallCheckedVenue(withBody('```\n## Winter\n```\n')).pegs;
  expect(peg?.notes).toEqual([{ heading: '', months: [], markdown: '```\n## Winter\n```' }]);
});

test('has no note where there is no text', () => {
  expect(smallCheckedVenue(withBody('\n\n')).pegs[0]?.notes).toEqual([]);
});

test('warns of HTML, pictures and a season missed by a letter, at their lines', () => {
  expect(
    messagesOf(withBody('Fish <b>here</b>.\n\n![The swim](swim.jpg)\n\n## Sprnig\n\nSlow.\n')),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:16:6 warning Unexpected "<b>", expected Markdown without HTML. Write it in Markdown; HTML is left out of the guide. (body-html)",
      "pegs/mill-pond/1.md:16:13 warning Unexpected "</b>", expected Markdown without HTML. Write it in Markdown; HTML is left out of the guide. (body-html)",
      "pegs/mill-pond/1.md:18:1 warning Unexpected picture "The swim", expected text. Name pictures under photos in the front matter of a peg; those in the text are left out of the guide. (body-picture)",
      "pegs/mill-pond/1.md:20:1 warning Unexpected heading "Sprnig", expected a season, All year, or months such as April to June. Did you mean Spring? As it stands it is a note without months. (body-season)",
    ]
  `);
});

test('warns of links that lead nowhere, or that would run a script and are not published', () => {
  const good =
    '[a](https://club.example/x) [b](mailto:a@club.example) <https://club.example> [c](tel:01632960000) [see][1]';
  const body = `${good}\n\n[d](javascript:alert(1)) [e](../2.md) [f](//club.example)\n\n[1]: data:text/html,x\n`;
  expect(faultsOf(withBody(body)).map(({ line, rule, found, severity }) => [line, rule, found, severity])).toEqual([
    [18, 'body-link', 'the link to "javascript:alert(1)"', 'warning'],
    [18, 'body-link', 'the link to "../2.md"', 'warning'],
    [18, 'body-link', 'the link to "//club.example"', 'warning'],
    [20, 'body-link', 'the link to "data:text/html,x"', 'warning'],
  ]);
});

test('lets comments to oneself pass', () => {
  expect(faultsOf(withBody('<!-- ask the bailiff -->\n\nText.\n'))).toEqual([]);
});
