import { messagesIn } from './messages';

/** What is said of a house that must not be entered after a treatment, on whatever screen it is named. */
export const closedMessages = messagesIn({
  en: {
    closed: (until: string, product: string) => `Closed until ${until} after ${product}: do not go in.`,
    closedShort: (until: string, product: string) => `closed until ${until} (${product})`,
  },
  es: {
    closed: (until: string, product: string) => `Cerrado hasta ${until} por ${product}: no entrar.`,
    closedShort: (until: string, product: string) => `cerrado hasta ${until} (${product})`,
  },
});
