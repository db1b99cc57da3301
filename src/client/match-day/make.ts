type Child = Node | string;

/** An element with its properties and what it holds; text stays text. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<HTMLElementTagNameMap[K]> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
}

/** A wide button that does something. */
export function button(text: string, onPress: () => void, isMain = false): HTMLButtonElement {
  const made = make('button', { type: 'button', className: isMain ? 'wide-button main' : 'wide-button' }, text);
  made.addEventListener('click', onPress);
  return made;
}
