import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { sourceSaid } from './source-words';

const FOLDER = '../seed/profiles';
const texts = readdirSync(FOLDER).flatMap((file) => {
  const { profile } = JSON.parse(readFileSync(`${FOLDER}/${file}`, 'utf8')) as {
    profile: { stages: { source: string }[]; note: string };
  };
  return [...profile.stages.map(({ source }) => source), profile.note];
});

it.each(['en', 'es'] as const)('no source of a seeded profile shows the name of a field (%s)', (language) => {
  expect(texts).toHaveLength(60);
  for (const text of texts) expect(sourceSaid(text, language)).not.toMatch(/\b[a-z]+(?:[A-Z]\w*)\b/);
});

it('says where a figure comes from by the labels of the form, and leaves all else as it is', () => {
  const source =
    'optimumC: published, Wilkerson et al. 2005 (abstract); minC: common practice, no source; pH: common practice, no source';
  expect(sourceSaid(source, 'en')).toBe(
    'fastest at: published, Wilkerson et al. 2005 (abstract); stands still below: common practice, no source; pH: common practice, no source',
  );
  expect(sourceSaid(source, 'es')).toBe(
    'más rápida a: publicado, Wilkerson et al. 2005 (abstract); se detiene bajo: práctica común, sin fuente; pH: common practice, no source',
  );
});

it('does not change again what it has said, nor what somebody typed', () => {
  const said = sourceSaid('daysAtReference: common practice, no source', 'es');
  expect(said).toBe('días: práctica común, sin fuente');
  expect(sourceSaid(said, 'es')).toBe(said);
  expect(sourceSaid('Our own trial of 2024: minC was never reached', 'en')).toBe(
    'Our own trial of 2024: minC was never reached',
  );
});
