type Message = string | ((...args: never[]) => unknown);

/** A sentence of a screen, for tests that hold all of them to one rule. */
export interface ToldMessage {
  readonly path: string;
  readonly language: string;
  readonly name: string;
  /** What it says when told this of everything; which a message takes, its type says. */
  readonly saidOf: (one: number | string) => string;
}

const files = import.meta.glob<Record<string, unknown>>('../*/*-messages.ts', { eager: true });

export const everyMessage: readonly ToldMessage[] = Object.entries(files).flatMap(([path, exports]) =>
  Object.values(exports).flatMap((all) =>
    Object.entries(all as Record<string, Record<string, Message>>).flatMap(([language, messages]) =>
      Object.entries(messages).map(([name, message]) => ({
        path,
        language,
        name,
        saidOf: (one: number | string) => said(message, one),
      })),
    ),
  ),
);

function said(message: Message, one: number | string): string {
  if (typeof message === 'string') return message;
  const say = message as (...args: readonly unknown[]) => unknown;
  return String(say(...Array.from({ length: say.length }, () => one)));
}
