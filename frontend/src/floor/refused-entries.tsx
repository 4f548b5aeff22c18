import { useOutbox } from '../outbox/outbox';
import { isEntry, refusedOnes } from '../outbox/outbox-state';
import { RefusedItem, RefusedList } from '../outbox/refused-item';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { useHouses } from '../shared/setup-lists';
import { entryMessages } from './entry-messages';
import { entryWords } from './entry-words';
import { actionIn } from './floor-state';

/** Entries that the server would not take, of one batch or of all. */
export function RefusedEntries({ batch, timeZone }: { batch?: string; timeZone: string | undefined }) {
  const words = useMessages(entryMessages);
  const format = useFormats();
  const houses = useHouses().data ?? [];
  const refused = refusedOnes(useOutbox())
    .filter(isEntry)
    .filter(({ message }) => batch === undefined || message.batch === batch);
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  return (
    <RefusedList count={refused.length}>
      {refused.map((item) => {
        const { entry, batch: id, batchName } = item.message;
        const action = actionIn(entry.kind);
        return (
          <RefusedItem
            key={item.key}
            item={item}
            what={`${words[`kind${entry.kind}`]}: ${entryWords(entry, { t: words, format, houseName })}`}
            about={`${id}, ${batchName}, ${format.dateTime(entry.happenedAt, timeZone)}`}
            timeZone={timeZone}
            mendAt={action && `/floor?batch=${encodeURIComponent(id)}&do=${action}&mend=${item.key}`}
          />
        );
      })}
    </RefusedList>
  );
}
