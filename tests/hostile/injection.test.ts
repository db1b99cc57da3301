import { DOMParser } from '@xmldom/xmldom';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { atomFeed } from '../../src/atlas/feeds/atom.ts';
import { csvText } from '../../src/atlas/feeds/csv.ts';
import { iCalendar } from '../../src/atlas/feeds/icalendar.ts';
import { markdownHtml } from '../../src/atlas/markdown-html.ts';
import { formatFault } from '../../src/content/format-fault.ts';

/** Scripts, refresh tags, formulas and forged lines, as they are put into fields that come from elsewhere. */
const PAYLOADS = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '<svg/onload=alert(1)>',
  '<meta http-equiv="refresh" content="0;url=https://evil.example/">',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<a href="javascript:alert(1)">x</a>',
  '<base href="https://evil.example/">',
  '<form action="https://evil.example/"><button>x</button></form>',
  '<style>@import "https://evil.example/x.css"</style>',
  '<math><mtext><table><mglyph><style><img src=x onerror=alert(1)></style></mglyph></table></mtext></math>',
  '"><script>alert(1)</script>',
  "' onmouseover='alert(1)",
  ']]><script>alert(1)</script><![CDATA[',
  '</title><script>alert(1)</script>',
  '--><script>alert(1)</script><!--',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](data:text/html,<script>alert(1)</script>)',
  '[x]( vbscript:msgbox(1))',
  '![x](https://evil.example/pixel.png)',
  '<https://evil.example/><script>',
  '[a]: javascript:alert(1)\n\n[a]',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  '&#106;avascript:alert(1)',
  '=HYPERLINK("https://evil.example/","x")',
  '+cmd|calc!A0',
  '-2+3+cmd|calc!A0',
  '@SUM(1+1)*cmd|calc!A0',
  '\t=1+1',
  '\r=1+1',
  'x\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nSUMMARY:forged',
  'x\nEND:VEVENT\nBEGIN:VEVENT\nSUMMARY:forged',
  'x\rEND:VEVENT\rSUMMARY:forged',
  'x","forged\r\n"row","y',
  'x\u001b[2K\rvenue is clean: 96 pegs',
  'x\nvenue is clean: 96 pegs',
  'x\u2028venue is clean',
  '\u202etxet denrut',
] as const;

/** What no page may hold, however it came there. */
const DANGEROUS =
  /<(?:script|iframe|object|embed|form|base|meta|style|svg|math|img|link)\b|\son\w+\s*=|(?:javascript|vbscript|data):/i;

describe.each(PAYLOADS)('%j', (payload) => {
  it('is no more than words in a page', () => {
    const html = markdownHtml(`Before ${payload} after\n\n${payload}`);
    // Words in text may name anything; a tag may not.
    const tags = html.match(/<[^>]*>/g)?.join('\n') ?? '';
    expect(tags).not.toMatch(DANGEROUS);
    for (const [, href = ''] of html.matchAll(/href="([^"]*)"/g))
      expect(href).toMatch(/^(?:https?:|mailto:|tel:|#|[^:]*$)/);
  });

  it('is one entry of the Atom feed', () => {
    const text = atomFeed({
      owner: payload,
      title: payload,
      subtitle: payload,
      url: 'https://club.example/notices/feed.xml',
      homeUrl: 'https://club.example/',
      author: payload,
      emptySince: '2026-11-21',
      entries: [
        {
          id: 'a',
          title: payload,
          url: 'https://club.example/a/',
          changedOn: '2026-11-21',
          html: markdownHtml(payload),
        },
      ],
    });
    const feed = new DOMParser().parseFromString(text, 'text/xml');
    expect(feed.getElementsByTagName('entry')).toHaveLength(1);
    expect(feed.getElementsByTagName('script')).toHaveLength(0);
    expect(feed.getElementsByTagName('title')).toHaveLength(2);
  });

  it('is one event of the calendar', () => {
    const text = iCalendar(payload, '2026-11-21', [
      { uid: 'a@club.example', day: '2026-12-01', summary: payload, description: payload },
    ]);
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(events).toHaveLength(1);
    expect(events[0]?.getAllProperties('summary')).toHaveLength(1);
  });

  it('is one cell of a table, and no formula', () => {
    const text = csvText(['a', 'b'], [[payload, 'end']]);
    const rows = parse(text) as string[][];
    expect(rows).toHaveLength(2);
    expect(rows[1]).toHaveLength(2);
    expect(rows[1]?.[0]).not.toMatch(/^[=+\-@\t\r]/);
  });

  it('is one line of a terminal', () => {
    const fault = { file: `pegs/${payload}.md`, line: 1, column: 1, field: payload, rule: 'x', found: payload };
    const line = formatFault({ ...fault, expected: payload, mend: payload, severity: 'error' });
    expect(line).toMatch(/^[^\p{Cc}\u2028-\u202e\u2066-\u2069]+$/u);
  });
});
