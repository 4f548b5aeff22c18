/** Elements of the board's grid, and how they are written: only where they differ, for each write costs a layout. */

export function made(tag: string, className: string, role: string): HTMLElement {
  const element = document.createElement(tag);
  element.className = className;
  element.setAttribute('role', role);
  return element;
}

export function numbered(element: HTMLElement, column: number): void {
  element.setAttribute('aria-colindex', String(column + 1));
  element.tabIndex = -1;
}

export function span(className: string, text: string): HTMLElement {
  const element = document.createElement('span');
  element.className = className;
  element.textContent = text;
  return element;
}

export function setAttribute(element: HTMLElement, attribute: string, text: string): void {
  if (element.getAttribute(attribute) !== text) element.setAttribute(attribute, text);
}

export function setContent(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

export function setTitle(element: HTMLElement, text: string): boolean {
  if (element.title === text) return false;
  element.title = text;
  return true;
}

export function setData(node: Text, text: string): boolean {
  if (node.data === text) return false;
  node.data = text;
  return true;
}
