import { useOutbox } from '../outbox/outbox';
import { isRound, refusedOnes, type RoundAnswer } from '../outbox/outbox-state';
import { RefusedItem, RefusedList } from '../outbox/refused-item';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { roundsMessages } from './rounds-messages';

/** Answers of a site's round that the server would not take. The check stands in the round again, to be done anew. */
export function RefusedChecks({ site }: { site: string }) {
  const t = useMessages(roundsMessages);
  const format = useFormats();
  const refused = refusedOnes(useOutbox())
    .filter(isRound)
    .filter(({ message }) => message.site === site);
  const said = (answer: RoundAnswer) =>
    ({ done: t.statedone, skipped: t.stateskipped, undo: t.undo })[answer.verb].toLowerCase();
  return (
    <RefusedList count={refused.length}>
      {refused.map((item) => {
        const { name, answer } = item.message;
        return (
          <RefusedItem
            key={item.key}
            item={item}
            what={`${name}: ${said(answer)}`}
            about={answer.verb === 'undo' ? '' : format.dateTime(answer.body.happenedAt)}
          />
        );
      })}
    </RefusedList>
  );
}
