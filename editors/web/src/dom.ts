/** Elements made from texts. Nothing here reads markup: what comes from a recipe stays text. */

type Child = Node | string | null | undefined | false;

/** An element with these attributes and children; `class`, `on…` and plain attributes. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Record<string, string | boolean | ((event: Event) => void)> = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false) element.setAttribute(name, value);
  }
  element.append(...children.filter((child): child is Node | string => child !== null && child !== undefined && child !== false));
  return element;
}

/** The element of the page with this id. */
export function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  const element = document.getElementById(id);
  if (!element) throw new Error(`the page lacks #${id}`);
  return element as T;
}

/** Something done once nothing more came for a while. */
export interface Settled {
  (): void;
  /** Drops what is still waiting. */
  cancel(): void;
}

/** Calls `run` once nothing more came for so many ms. */
export function settled(wait: number, run: () => void): Settled {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(run, wait);
  };
  return Object.assign(soon, { cancel: () => clearTimeout(timer) });
}
