/** What is recorded about a batch of the mock, kept in memory so that it is seen. */
import { problem } from './common.mjs';

const entries = new Map();

function storyOf(batch) {
  if (!entries.has(batch.id)) {
    entries.set(batch.id, [
      {
        ...blankEntry(`${batch.id}-1`, 'stick', batch.stuckAt),
        plants: batch.plants.stuck,
        trays: batch.traysStuck,
        house: batch.house,
        aliveAfter: batch.plants.stuck,
        postings: [posting('supplier', -batch.plants.stuck, batch), posting('alive', batch.plants.stuck, batch)],
      },
    ]);
  }
  return entries.get(batch.id);
}

function blankEntry(id, kind, happenedAt) {
  const none = ['recordedBy', 'plants', 'trays', 'cause', 'note', 'stage', 'house', 'sampledTrays', 'sampledCells'];
  const more = ['blanks', 'cells', 'reached', 'reverses', 'reversedBy', 'reason', 'order', 'line'];
  const fields = Object.fromEntries([...none, ...more].map((name) => [name, null]));
  return { id, position: ++lastPosition, kind, happenedAt, recordedAt: happenedAt, ...fields, postings: [] };
}
let lastPosition = 5_000;
const posting = (account, plants, batch) => ({
  account,
  plants,
  house: account === 'alive' ? batch.house : null,
  cause: null,
  effectiveAt: batch.stuckAt,
});

export function recordEntry(batch, body) {
  const story = storyOf(batch);
  if (body.kind === 'look' && body.reached > body.cells)
    return problem(422, 'out-of-range', `${body.reached} of ${body.cells} cells cannot be.`, {
      errors: [{ field: 'reached', message: `At most ${body.cells}.` }],
    });
  const { kind, happenedAt, entry, ...rest } = body;
  const made = { ...blankEntry(`${batch.id}-${story.length + 1}`, kind, happenedAt), ...rest };
  if (kind === 'reversal') {
    made.reverses = entry;
    const undone = story.find((each) => each.id === entry);
    if (undone) undone.reversedBy = made.id;
    if (undone?.kind === 'loss') batch.plants.alive += undone.plants;
  }
  if (kind === 'loss') batch.plants.alive -= body.plants;
  if (kind === 'count' && body.plants !== undefined) batch.plants.alive = body.plants;
  made.aliveAfter = batch.plants.alive;
  story.push(made);
  return [
    201,
    { id: made.id, position: made.position, kind, stage: batch.stage, alive: batch.plants.alive, trays: batch.trays },
  ];
}

export const entriesOf = (batch) => storyOf(batch);
