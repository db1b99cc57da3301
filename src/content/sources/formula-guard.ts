/** What a spreadsheet takes for the beginning of a formula (OWASP, "CSV injection"). */
const FORMULA = /^[=+\-@\t\r]/;

/** Text that a spreadsheet opens as text: one that would be taken for a formula is led by an apostrophe. */
export function withFormulaGuard(text: string): string {
  // One that begins with an apostrophe before such a sign gets another, so that reading gives back what was written.
  return FORMULA.test(text.replace(/^'+/, '')) ? `'${text}` : text;
}

/** The text as it was before `withFormulaGuard`. */
export function withoutFormulaGuard(text: string): string {
  return text.startsWith("'") && FORMULA.test(text.replace(/^'+/, '')) ? text.slice(1) : text;
}
