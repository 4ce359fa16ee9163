type Attributes = Readonly<Record<string, string | boolean | undefined>>;

/** An element with attributes and children; text stays text. */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, '');
    else if (value !== undefined && value !== false) element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

/** Puts new content into an element; what had the focus and what was unfolded stay so. */
export function fill(element: HTMLElement, ...children: readonly (Node | string)[]): void {
  const focused = element.contains(document.activeElement) ? document.activeElement?.id : undefined;
  const open = new Set(
    [...element.querySelectorAll<HTMLDetailsElement>('details[open]')].map(({ id }) => id),
  );
  element.replaceChildren(...children);
  for (const details of element.querySelectorAll('details')) if (open.has(details.id)) details.open = true;
  if (focused) document.getElementById(focused)?.focus();
}

/** A button that does one thing. */
export function button(label: string, act: () => void, attributes: Attributes = {}): HTMLButtonElement {
  const element = h('button', { type: 'button', ...attributes }, label);
  element.addEventListener('click', act);
  return element;
}

/** One choice of a list. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** A list to choose from. */
export function select(
  id: string,
  choices: readonly Choice[],
  chosen: string,
  change: (value: string) => void,
  attributes: Attributes = {},
): HTMLSelectElement {
  const options = choices.map(({ value, label }) => {
    const option = h('option', { value }, label);
    option.selected = value === chosen;
    return option;
  });
  const element = h('select', { id, ...attributes }, ...options);
  element.addEventListener('change', () => change(element.value));
  return element;
}

/** Hands a text to the person as a file. */
export function saveFile(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = h('a', { href: url, download: name });
  link.click();
  // The browser reads the file after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
