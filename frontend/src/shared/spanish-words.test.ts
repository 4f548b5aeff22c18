import { describe, expect, it } from 'vitest';

/** All words that screens say. */
const words = Object.entries(
  import.meta.glob<string>('../**/*-{messages,words}.ts', { eager: true, query: '?raw', import: 'default' }),
);

/** One word for one thing, as the crews say it: charola, invernadero, plantar, esqueje. And no hour before a day. */
describe('Spanish has one word for one thing', () => {
  it.each([
    ['bandeja for a charola', /\bband(eja|\.')/i],
    ['nave for an invernadero', /\bnaves?\b/i],
    ['pinchar or siembra for plantar', /\bpinch|\bsiembr/i],
    ['estaca for an esqueje', /\bestacas?\b/i],
    ['a batch, el lote, that is lista', /'[Ll]ista( p\d+)?'/],
    ['an invernadero that is cerrada or vacía', /está cerrada|isClosed: 'cerrada'|empty: 'vacía'/],
    ['abono for fertilizante', /\babono/i],
    ['pulverizado for aspersión', /\bpulveriz/i],
    ['compromiso for promesa', /\bcompromisos?\b/i],
    ['abiertas for charolas libres', /[Cc]harolas abiertas|[Oo]pen: '[Aa]biertas'|\$\{open\} abiertas|\bAbiertas\b/],
    ['mirado for revisado', /\bmirad[ao]s\b|\bMire al menos/],
    ['saltar for omitir', /\bse salta\b/],
    ['Planta, that is what grows there, for the room where entries are made', /\bPlanta\b/],
    ['enviar for embarcar, that is what entries are', /\benvíos?\b|ship(ped)?: 'Envia|SHIP: '[Ee]nviad/],
    ['"a las" before a day', /`a las \$\{when\}`/],
  ])('not %s', (_, other) => {
    const found = words.flatMap(([path, text]) =>
      text.split('\n').flatMap((line) => (other.test(line) ? [`${path} ${line.trim()}`] : [])),
    );
    expect(words.length).toBeGreaterThan(30);
    expect(found).toEqual([]);
  });
});
