import { describe, expect, it } from 'vitest';

/** Messages of the folders whose words go through `counted`; a folder joins by its name. */
const FOLDERS = ['batches', 'board', 'setup', 'shared', 'track-record', 'what-if'];

const files = import.meta.glob<Record<string, unknown>>('../*/*-messages.ts', { eager: true });
const MANY =
  /(?<![\d.,] ?)\b1 (batches|blanks|cases|cells|days|entries|hours|houses|items|plants|promises|readings|rows|trays|weeks|artículos|casos|celdas|charolas|días|filas|horas|lecturas|lotes|plantas|promesas)\b/;

type Message = string | ((...args: never[]) => unknown);

/** Told one of everything, as a number or as the figure that it is shown as: which a message takes, its type says. */
function saidOfOne(message: Message, one: number | string): string {
  if (typeof message === 'string') return message;
  const say = message as (...args: readonly unknown[]) => unknown;
  return String(say(...Array.from({ length: say.length }, () => one)));
}

describe('one thing is never told as several', () => {
  const folderOf = (path: string) => (path.startsWith('./') ? 'shared' : path.split('/')[1]);
  const folders = Object.entries(files).filter(([path]) => FOLDERS.includes(folderOf(path) ?? ''));

  it('in any folder that is looked at', () => {
    expect(new Set(folders.map(([path]) => folderOf(path)))).toEqual(new Set(FOLDERS));
    const wrong = folders.flatMap(([path, exports]) =>
      Object.values(exports).flatMap((all) =>
        Object.entries(all as Record<string, Record<string, Message>>).flatMap(([language, messages]) =>
          Object.entries(messages).flatMap(([name, message]) => {
            const said = [1, '1'].map((one) => saidOfOne(message, one));
            return said.every((each) => MANY.test(each)) ? [`${path} ${language}.${name}: ${said[0]}`] : [];
          }),
        ),
      ),
    );
    expect(wrong).toEqual([]);
  });
});
