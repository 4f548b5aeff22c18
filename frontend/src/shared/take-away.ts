/** Getting what is shown out of the program: the clipboard and files. */

export async function copyText(text: string): Promise<void> {
  // The clipboard interface is missing on plain http, which is usual on a nursery's own network.
  if ('clipboard' in navigator) return navigator.clipboard.writeText(text);
  const area = document.createElement('textarea');
  area.value = text;
  document.body.append(area);
  area.select();
  const done = document.execCommand('copy');
  area.remove();
  if (!done) throw new Error('not allowed');
}

export function saveText(text: string, name: string, type: string): void {
  // The byte order mark lets spreadsheets take it as UTF-8.
  saveFile(new Blob(['\ufeff', text], { type: `${type};charset=utf-8` }), name);
}

export function saveFile(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
