import { outbox } from '../outbox/outbox';
import type { RoundAnswer } from '../outbox/outbox-state';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { roundsMessages } from './rounds-messages';
import type { ShownItem } from './rounds-state';

/** Answers a check of the round. It is safe on the device when the promise is kept, and sent as soon as it can be. */
export function useAnswerCheck(site: string, item: ShownItem) {
  const t = useMessages(roundsMessages);
  const name = [t[item.task], item.batch].filter(Boolean).join(', ');
  const message = (answer: RoundAnswer) =>
    ({ to: 'round', site, item: item.id, batch: item.batch, name, answer }) as const;
  const undone = () => notice({ text: t.undone(name), topic: 'rounds' });
  return {
    name,
    close: async (answer: Exclude<RoundAnswer, { verb: 'undo' }>): Promise<void> => {
      const key = await outbox.add(message(answer));
      notice({
        text: answer.verb === 'done' ? t.recorded(name) : t.skipped(name),
        topic: 'rounds',
        undo: async () => {
          await outbox.undo(key, t.undoReason);
          undone();
        },
      });
    },
    /** Takes back what this device has just pressed, or what the server knows as closed. */
    reopen: async (): Promise<void> => {
      if (item.unsent === undefined) await outbox.add(message({ verb: 'undo', body: { reason: t.undoReason } }));
      else await outbox.undo(item.unsent, t.undoReason);
      undone();
    },
  };
}
