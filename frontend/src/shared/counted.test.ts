import { describe, expect, it } from 'vitest';
import { everyMessage } from './every-message';

const MANY =
  /(?<![\d.,] ?)\b1 (batches|blanks|cases|cells|days|entries|hours|houses|items|plants|promises|readings|rows|trays|weeks|characters|checks|columns|flags|hours|lines|minutes|persons|seconds|sensors|sessions|things|times|traps|treatments|warnings|keys|people|artículos|casos|celdas|charolas|días|filas|horas|lecturas|lotes|plantas|promesas|avisos|cosas|columnas|lecturas|minutos|personas|renglones|segundos|sensores|sesiones|tareas|trampas|tratamientos|veces|claves|entradas|cerradas|vacías|enviados|rechazados|hechas|vivas|houses|invernaderos|sitios|sites|registros)\b/;

describe('one thing is never told as several', () => {
  it('in any folder', () => {
    expect(new Set(everyMessage.map(({ path }) => path)).size).toBeGreaterThan(20);
    const wrong = everyMessage.flatMap(({ path, language, name, saidOf }) => {
      const said = [1, '1'].map(saidOf);
      return said.every((each) => MANY.test(each)) ? [`${path} ${language}.${name}: ${said[0]}`] : [];
    });
    expect(wrong).toEqual([]);
  });
});
