/** Data as text for a script element: nothing in it can end the element, whose only ways out are its end tag and a comment that hides it. */
export function scriptJson(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c');
}
