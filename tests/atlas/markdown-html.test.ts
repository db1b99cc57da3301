import { describe, expect, it } from 'vitest';
import { markdownHtml } from '../../src/atlas/markdown-html.ts';

describe('markdownHtml', () => {
  it('keeps words, lists and tables', () => {
    expect(markdownHtml('Roach *hold* here.')).toBe('<p>Roach <em>hold</em> here.</p>');
    expect(markdownHtml('| a | b |\n| :-- | --: |\n| 1 | 2 |')).toContain('<td>1</td>');
  });

  it.each([
    ['<script>alert(1)</script>', 'script'],
    ['<p onclick="alert(1)">x</p>', 'onclick'],
    ['[x](javascript:alert(1))', 'javascript'],
    ['![x](https://elsewhere.example/track.png)', 'img'],
    ['<p style="color:red">x</p>', 'style'],
  ])('lets nothing through that could run or call elsewhere: %s', (markdown, never) => {
    expect(markdownHtml(markdown)).not.toContain(never);
  });

  it('fits headings below those of the page and keeps their order', () => {
    expect(markdownHtml('# Rules\n\n## Nets', 2)).toBe('<h2>Rules</h2>\n<h3>Nets</h3>');
    expect(markdownHtml('### Nets', 3)).toBe('<h3>Nets</h3>');
  });
});
