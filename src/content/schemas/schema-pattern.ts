/**
 * The forms in which something may be written, as one pattern of a JSON Schema: those have no flag for capitals, so where a form
 * does not mind them each letter stands for both. Blanks at the ends are let through, as the readers let them.
 */
export function schemaPattern(forms: readonly RegExp[]): string {
  const each = forms.map(({ source, flags }) => {
    const inner = source.replace(/^\^/, '').replace(/\$$/, '');
    return `(?:${flags.includes('i') ? eitherCase(inner) : inner})`;
  });
  return `^(?=\\s*\\S)\\s*(?:${each.join('|')})\\s*$`;
}

/** Letters of a pattern, escapes aside, in both their cases. */
function eitherCase(source: string): string {
  return source.replace(/\\.|\[[^\]]*\]|[a-z]/giu, (piece) => {
    if (piece.startsWith('\\')) return piece;
    const [lower, upper] = [piece.toLowerCase(), piece.toUpperCase()];
    if (lower === upper) return piece;
    return piece.startsWith('[') ? `[${lower.slice(1, -1)}${upper.slice(1)}` : `[${lower}${upper}]`;
  });
}
