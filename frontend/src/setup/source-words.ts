import { messagesIn } from '../shared/messages';
import { setupMessages } from './setup-messages';
import type { Language } from '../shared/preferences';

/**
 * What a figure rests on, as seeded profiles say it and as a reader sees it: `minC: common practice, no source` names a
 * field and is English. The form shows it by its own labels; who changes the text keeps it in those words.
 */

export const FIGURES = [
  'daysAtReference',
  'referenceC',
  'minC',
  'optimumC',
  'maxC',
  'survivalMean',
  'survivalWeight',
  'rateSpread',
  'holdDays',
] as const;
type Figure = (typeof FIGURES)[number];

const words = messagesIn({
  en: { common: 'common practice, no source', published: 'published', range: 'published range' },
  es: { common: 'práctica común, sin fuente', published: 'publicado', range: 'intervalo publicado' },
});

/** The label that the form has for a figure of a profile; the name itself where it is none. */
export function figureLabel(figure: string, language: Language): string {
  const t = setupMessages[language];
  if (!isFigure(figure)) return figure;
  return figure === 'daysAtReference' ? t.days : t[figure];
}

const MARK = /(^|[;.] )(\w+): (common practice, no source|published range|published)/g;

export function sourceSaid(text: string, language: Language): string {
  const say = words[language];
  return text.replace(MARK, (whole, before: string, figure: string, mark: string) => {
    if (!isFigure(figure)) return whole;
    const said = mark === 'published' ? say.published : mark === 'published range' ? say.range : say.common;
    return `${before}${figureLabel(figure, language)}: ${said}`;
  });
}

function isFigure(name: string): name is Figure {
  return FIGURES.some((each) => each === name);
}
