import { describe, expect, it } from 'vitest';

const files = import.meta.glob<Record<string, unknown>>('../*/*-messages.ts', { eager: true });
const MANY =
  /(?<![\d.,] ?)\b1 (batches|blanks|cases|cells|days|entries|hours|houses|items|plants|promises|readings|rows|trays|weeks|characters|checks|columns|flags|hours|lines|minutes|persons|seconds|sensors|sessions|things|times|traps|treatments|warnings|keys|people|artículos|casos|celdas|charolas|días|filas|horas|lecturas|lotes|plantas|promesas|avisos|cosas|columnas|lecturas|minutos|personas|renglones|segundos|sensores|sesiones|tareas|trampas|tratamientos|veces|claves|entradas|cerradas|vacías|enviados|rechazados|hechas|vivas|houses|invernaderos|sitios|sites|registros)\b/;

type Message = string | ((...args: never[]) => unknown);

/** Told one of everything, as a number or as the figure that it is shown as: which a message takes, its type says. */
function saidOfOne(message: Message, one: number | string): string {
  if (typeof message === 'string') return message;
  const say = message as (...args: readonly unknown[]) => unknown;
  return String(say(...Array.from({ length: say.length }, () => one)));
}

describe('one thing is never told as several', () => {
  it('in any folder', () => {
    const folders = Object.entries(files);
    expect(folders.length).toBeGreaterThan(20);
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
