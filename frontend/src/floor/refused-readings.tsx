import { useOutbox } from '../outbox/outbox';
import { isReading, refusedOnes } from '../outbox/outbox-state';
import { RefusedItem, RefusedList } from '../outbox/refused-item';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { handMessages } from './hand-messages';
import { byHandAt } from './hand-readings-state';
import { readingWords } from './hand-words';

/** Readings by hand that the server would not take, to be read again. */
export function RefusedReadings({ timeZone }: { timeZone: string | undefined }) {
  const t = useMessages(handMessages);
  const format = useFormats();
  const refused = refusedOnes(useOutbox()).filter(isReading);
  return (
    <RefusedList count={refused.length}>
      {refused.map((item) => (
        <RefusedItem
          key={item.key}
          item={item}
          {...readingWords(item.message, t, format, timeZone)}
          timeZone={timeZone}
          mendAt={byHandAt(item.message.site, item.message.reading.house)}
        />
      ))}
    </RefusedList>
  );
}
