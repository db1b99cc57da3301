import { readFileSync } from 'node:fs';
import { describe, expect, inject, it } from 'vitest';
import { PAGE_KINDS } from './page-kinds.ts';

/** The emergency block of a page as it is built, so that it holds without script: its words in their order. */
function emergencyOf(path: string): string {
  const file = path.endsWith('.html') ? path : `${path}index.html`;
  const html = readFileSync(`${inject('siteFolder')}/${file}`, 'utf8');
  const block = /<section[^>]*id="emergency"[\s\S]*?<\/section>/.exec(html)?.[0] ?? '';
  return block
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

// The order is the project's own rule, after what the fire service asks of bystanders (see the safety page for the source).
describe('the emergency block', () => {
  it.each(Object.entries(PAGE_KINDS))('tells first what to do for someone in the water: %s', (_kind, path) => {
    const words = emergencyOf(path);
    expect(words).toMatch(
      /^In an emergency Someone is in the water ?\. Call 999, or make someone call\. Do not go in\. .*Throw a line.* Throw lines?\b/,
    );
    expect(words.indexOf('Throw line')).toBeLessThan(words.indexOf('Ambulance, fire, police'));
  });

  it('of a sheet names the nearest throw line with its walk and the position to read out, before all else', () => {
    const words = emergencyOf('kiln-pool/23/');
    expect(words).toMatch(
      /Throw line: Throw line K\d, \d+ m [a-z-]+ \(walk \d+ m\).* Say: .*peg 23 .*grid [A-Z]{2} \d+ \d+ .* N, .* [EW]\b/,
    );
    expect(words.indexOf('Say:')).toBeLessThan(words.indexOf('Ambulance, fire, police'));
  });

  it('of a water names each of its throw lines with the peg it hangs by', () => {
    expect(emergencyOf('kiln-pool/')).toMatch(/Throw lines of Kiln Pool: (K\d by peg \d+[^,.]*, )+K\d by peg \d+/);
  });
});
