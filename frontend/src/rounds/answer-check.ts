import { outbox } from '../outbox/outbox';
import type { RoundAnswer } from '../outbox/outbox-state';
import type { RoundDone } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { useHouses } from '../shared/setup-lists';
import { recordedWords } from './answer-words';
import { roundsMessages } from './rounds-messages';
import type { ShownItem } from './rounds-state';

/** Answers a check of the round. It is safe on the device when the promise is kept, and sent as soon as it can be. */
export function useAnswerCheck(site: string, item: ShownItem) {
  const t = useMessages(roundsMessages);
  const { integer } = useFormats();
  const houses = useHouses().data ?? [];
  const houseName = (code: string) => houses.find((house) => house.code === code)?.name ?? code;
  const name = [t[item.task], item.batch].filter(Boolean).join(', ');
  const message = (answer: RoundAnswer) =>
    ({ to: 'round', site, item: item.id, batch: item.batch, name, answer }) as const;
  const undone = () => notice({ text: t.undone(name), topic: 'rounds' });
  return {
    name,
    close: async (answer: Exclude<RoundAnswer, { verb: 'undo' }>): Promise<void> => {
      const key = await outbox.add(message(answer));
      notice({
        text: answer.verb === 'done' ? recordedWords(item, answer.body, t, { integer, houseName }) : t.skipped(name),
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

/** Closes the same check of several batches with one answer; one undo takes all of them back. */
export function useCloseTogether(site: string, items: readonly [ShownItem, ...ShownItem[]]) {
  const t = useMessages(roundsMessages);
  const { integer } = useFormats();
  const name = t[items[0].task];
  return async (done: RoundDone): Promise<void> => {
    const keys: string[] = [];
    for (const { id, task, batch } of items) {
      const named = [t[task], batch].filter(Boolean).join(', ');
      keys.push(
        await outbox.add({ to: 'round', site, item: id, batch, name: named, answer: { verb: 'done', body: done } }),
      );
    }
    notice({
      text: t.recordedForAll(name, integer(keys.length)),
      topic: 'rounds',
      undo: async () => {
        for (const key of keys) await outbox.undo(key, t.undoReason);
        notice({ text: t.undone(name), topic: 'rounds' });
      },
    });
  };
}
