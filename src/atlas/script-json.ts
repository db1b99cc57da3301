/** Data as text for a script element: nothing in it can end the element. */
export function scriptJson(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
