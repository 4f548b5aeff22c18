import { entryMessages } from '../floor/entry-messages';
import { entryWords } from '../floor/entry-words';
import { handMessages } from '../floor/hand-messages';
import { readingWords } from '../floor/hand-words';
import type { Message } from '../outbox/outbox-state';
import { answerWords } from '../rounds/answer-words';
import { roundsMessages } from '../rounds/rounds-messages';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';

/** What was pressed, as people are told of it: an entry of a batch, an answer to a check, or a reading. */
export function useMessageWords(): (message: Message) => { readonly what: string; readonly about: string } {
  const words = useMessages(entryMessages);
  const rounds = useMessages(roundsMessages);
  const hand = useMessages(handMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  return (message) => {
    if (message.to === 'round') return answerWords(message, rounds, format, undefined);
    if (message.to === 'reading') return readingWords(message, hand, format, undefined);
    const { batch, batchName, entry } = message;
    return {
      what: `${words[`kind${entry.kind}`]}: ${entryWords(entry, { t: words, format, houseName })}`,
      about: `${batch}, ${batchName}, ${format.dateTime(entry.happenedAt)}`,
    };
  };
}
