/**
 * The one element a selector names.
 * @throws where the page has none: page and script belong together
 */
export function requireElement<T extends HTMLElement = HTMLElement>(
  selector: string,
  within: ParentNode = document,
): T {
  const element = within.querySelector<T>(selector);
  if (element === null) throw new Error(`The page has no ${selector}.`);
  return element;
}

/** A new copy of what a template holds: its first element. */
export function fromTemplate<T extends HTMLElement = HTMLElement>(id: string): T {
  const template = requireElement<HTMLTemplateElement>(`#${id}`);
  const element = template.content.firstElementChild?.cloneNode(true);
  if (!(element instanceof HTMLElement)) throw new Error(`The template ${id} is empty.`);
  return element as T;
}

/** A time as the clock on the wall shows it: `14:02`. */
export function clockTime(at: Date): string {
  return at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
}
