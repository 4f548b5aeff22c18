import { describe, expect, test } from 'vitest';
import { formatsFor } from '../shared/formats';
import { confirmed, doubtMessages, doubtWords, isDoubt } from './doubt-words';
import type { Message, Refusal } from './outbox-state';

const format = formatsFor({ language: 'en', temperature: 'C' });
const refusal = (kind: string, members: Refusal['members']): Refusal => ({ status: 409, kind, detail: '', members });
const words = (doubt: Refusal) => doubtWords(doubt, doubtMessages.en, format, 'America/Chicago');

describe('what is hardly likely', () => {
  test('is asked with both figures and how likely it is', () => {
    const few = refusal('implausible-plants', { asked: 164, booked: 1656, least: 1480, most: 1640, probability: 0 });
    expect(words(few)).toBe(
      'That leaves 164 plants alive. The books say 1,656, and 1,480 to 1,640 are expected: fewer than 1 batch in 10,000 is so far off.',
    );
    expect(isDoubt(few)).toBe(true);
  });

  test('says the days of the site', () => {
    const early = refusal('implausible-stage', {
      asked: 'READY',
      seenAt: '2026-11-12T02:00:00Z',
      expected: '2026-12-04T20:00:00Z',
      probability: 0.004,
    });
    expect(words(early)).toBe('Ready on 11 Nov: it is expected about 4 Dec, and about 1 batch in 250 is so early.');
  });

  test('is sent again as it was typed, with the answer', () => {
    const entry = { kind: 'count', plants: 164, happenedAt: '2026-11-12T02:00:00Z', confirmed: false } as const;
    const message: Message = { to: 'batch', batch: 'B1', batchName: 'Sage', entry };
    expect(confirmed(message)).toEqual({ ...message, entry: { ...entry, confirmed: true } });
    const round: Message = {
      to: 'round',
      site: 'S1',
      item: 'count.B1',
      batch: 'B1',
      name: 'Count',
      answer: { verb: 'done', body: { happenedAt: entry.happenedAt, plants: 164, confirmed: false } },
    };
    expect(confirmed(round)).toMatchObject({ answer: { body: { plants: 164, confirmed: true } } });
  });
});
