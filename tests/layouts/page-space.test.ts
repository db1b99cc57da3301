import { expect, it } from 'vitest';
import { withoutIdleSpace } from '../../src/layouts/page-space.ts';

it('takes away the space between the parts of a table and at the edges of blocks', () => {
  expect(withoutIdleSpace('<table> <tr>\n <td class="a"> 2 </td> <td>3</td> </tr> </table>')).toBe(
    '<table><tr><td class="a">2</td><td>3</td></tr></table>',
  );
});

it('keeps one space where words meet words', () => {
  expect(withoutIdleSpace('<p>\n To frame\n  <b>24 lb</b> <span>(18 to 31)</span> </p>')).toBe(
    '<p>To frame <b>24 lb</b> <span>(18 to 31)</span></p>',
  );
});

it('touches nothing where every space counts', () => {
  const kept = '<pre>\n  a <td> \n</pre><script>let a = "  </td>  "</script><textarea>\n x </textarea>';
  expect(withoutIdleSpace(`<div> ${kept} </div>`)).toBe(`<div>${kept}</div>`);
});

it('does not mistake a name that begins alike for a block', () => {
  expect(withoutIdleSpace('a <thing>b</thing> <path d="M0 0"/> c')).toBe('a <thing>b</thing> <path d="M0 0"/> c');
});

it('leaves no space before a comma or semicolon that began a line of a template', () => {
  expect(withoutIdleSpace('<dd>135 m east\n  , locked ; <a>Bailiff</a> , day</dd>')).toBe(
    '<dd>135 m east, locked; <a>Bailiff</a>, day</dd>',
  );
});
