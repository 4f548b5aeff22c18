import { expect, it } from 'vitest';
import type { Ingest } from '../shared/reading-types';
import { notStored, sensorFrom, unknownMessages, unknownTopics } from './ingest-state';

const fault = (what: string, at: string) => ({ what, at, reason: 'no sensor has this topic' });
const INGEST: Ingest = {
  mqtt: {
    state: 'connected',
    broker: 'broker:1883',
    waiting: 0,
    lastConnectedAt: null,
    reconnects: 0,
    lastError: null,
  },
  ways: [
    {
      way: 'mqtt',
      received: 40,
      stored: 25,
      duplicates: 1,
      faults: [
        { kind: 'malformed', count: 2, last: [fault('range/9/air: wet', '2026-11-20T08:00:00Z')] },
        {
          kind: 'unknown-topic',
          count: 12,
          last: [
            fault('range/1/air: 21.5', '2026-11-20T08:03:00Z'),
            fault('range/2: north: {"value": 3, "at": "x: 1"}', '2026-11-20T08:05:00Z'),
            fault('range/1/air: -1', '2026-11-20T08:04:00Z'),
            fault('a topic that was cut short …', '2026-11-20T08:06:00Z'),
          ],
        },
      ],
    },
  ],
};

it('names each topic that no sensor has once, as it was last heard', () => {
  expect(unknownMessages(INGEST)).toBe(12);
  expect(unknownTopics(INGEST).map(({ topic, message }) => [topic, message])).toEqual([
    ['range/2: north', '{"value": 3, "at": "x: 1"}'],
    ['range/1/air', '-1'],
  ]);
});

it('counts all that is not in the series', () => {
  expect(INGEST.ways.map(notStored)).toEqual([14]);
});

it('leads to a form that holds the topic', () => {
  expect(sensorFrom('range/2/a b&c')).toBe('/setup/sensors/~new?topic=range%2F2%2Fa+b%26c');
});
