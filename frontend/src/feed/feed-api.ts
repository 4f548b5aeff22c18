import type { Schemas } from '../shared/contract';
import { answer, api } from '../shared/http';
import type { Calculation, FeedQuestion } from './feed-state';

/** What the server answers; members that do not belong to a question are absent. */
export type FeedAnswer = Partial<
  Schemas['StockAnswer'] &
    Schemas['StrengthAnswer'] &
    Schemas['InjectorAnswer'] &
    Schemas['ConductivityAnswer'] &
    Schemas['DilutionAnswer']
>;

/** Each calculation has a form of its own, which asks for what it needs; its values the server judges. */
const ASK: { readonly [Of in Calculation]: (question: FeedQuestion) => Promise<FeedAnswer> } = {
  stock: (question) => answer(api.POST('/api/feed/stock', { body: question as Schemas['StockWire'] })),
  strength: (question) => answer(api.POST('/api/feed/strength', { body: question as Schemas['StrengthWire'] })),
  injector: (question) => answer(api.POST('/api/feed/injector', { body: question as Schemas['InjectorWire'] })),
  ec: (question) => answer(api.POST('/api/feed/ec', { body: question as Schemas['ConductivityWire'] })),
  dilution: (question) => answer(api.POST('/api/feed/dilution', { body: question as Schemas['DilutionWire'] })),
};

/** Nothing is stored: the same question has the same answer. */
export function ask(calculation: Calculation, question: FeedQuestion): Promise<FeedAnswer> {
  return ASK[calculation](question);
}
