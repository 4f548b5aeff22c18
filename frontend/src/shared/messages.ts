import { usePreferences, type Language } from './preferences';

/**
 * The words on the screens. Each folder keeps its own `*-messages.ts`:
 *
 *     export const floorMessages = messagesIn({
 *       en: { title: 'Floor', sent: (n: number) => `${n} sent` },
 *       es: { title: 'Captura', sent: (n: number) => `${n} enviados` },
 *     });
 *
 * and draws with `const t = useMessages(floorMessages)`; `t.sent(3)`. A language that lacks a word does not compile.
 */
export type Messages<T> = Readonly<Record<Language, T>>;

type Word = string | ((...parts: never[]) => string);
type Spoken<T> = { readonly [K in keyof T]: T[K] extends string ? string : T[K] };

export function messagesIn<const T extends Readonly<Record<string, Word>>>(words: {
  readonly en: T;
  readonly es: NoInfer<Spoken<T>>;
}): Messages<Spoken<T>> {
  return words as Messages<Spoken<T>>;
}

export function useMessages<T>(messages: Messages<T>): T {
  return messages[usePreferences().language];
}
