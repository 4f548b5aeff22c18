import type { Site } from '../shared/api-types';
import { useOutbox } from '../outbox/outbox';
import { isRound, refusedOnes } from '../outbox/outbox-state';
import { RefusedItem, RefusedList } from '../outbox/refused-item';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { answerWords } from './answer-words';
import { roundsMessages } from './rounds-messages';

/** Answers of a site's round that the server would not take. The check stands in the round again, to be done anew. */
export function RefusedChecks({ site: { code: site, timeZone } }: { site: Site }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const refused = refusedOnes(useOutbox())
    .filter(isRound)
    .filter(({ message }) => message.site === site);
  return (
    <RefusedList count={refused.length}>
      {refused.map((item) => (
        <RefusedItem
          key={item.key}
          item={item}
          {...answerWords(item.message, t, format, timeZone)}
          timeZone={timeZone}
        />
      ))}
    </RefusedList>
  );
}
