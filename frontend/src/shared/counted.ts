/** A number of things in words: 1 tray, 2 trays. A figure that was formatted already is taken as it is. */
export function counted(n: number | string, one: string, many: string): string {
  return `${n} ${String(n) === '1' ? one : many}`;
}
