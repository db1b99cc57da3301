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

/** A control with its label in front. */
export function labelled(words: string, control: HTMLElement): HTMLLabelElement {
  return make('label', {}, `${words} `, control);
}

/** A choice of options, each with its value and its words; the first is chosen where no other is. */
export function chooser(
  options: readonly (readonly [value: string, words: string])[],
  chosen = options[0]?.[0] ?? '',
): HTMLSelectElement {
  const select = make('select', {}, ...options.map(([value, words]) => new Option(words, value)));
  select.value = chosen;
  return select;
}
