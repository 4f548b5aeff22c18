import type { Page } from '@playwright/test';
import type { Ingest } from '../src/shared/reading-types';

const INGEST: Ingest = {
  mqtt: {
    state: 'connected',
    broker: 'broker.range:1883',
    waiting: 0,
    lastConnectedAt: '2026-03-09T08:00:00Z',
    reconnects: 2,
    lastError: null,
  },
  refused: {
    count: 1,
    last: [
      {
        id: '0d3b1c1e-6c3b-4a6e-9b1a-6f0f5b1f0c11',
        topic: 'range/7/medium',
        payload: '21.5',
        reason: 'the table does not take it',
        at: '2026-03-09T08:04:00Z',
      },
    ],
  },
  unknownTopics: [{ topic: 'range/7/air', count: 16, last: '21.5', at: '2026-03-09T08:05:00Z' }],
  ways: [
    {
      way: 'mqtt',
      received: 12_480,
      stored: 12_461,
      duplicates: 3,
      faults: [
        {
          kind: 'unknown-topic',
          count: 16,
          last: [
            {
              what: 'range/7/air: 21.5',
              why: { code: 'no-sensor-of-topic', values: {}, english: 'no sensor has this topic' },
              at: '2026-03-09T08:05:00Z',
            },
          ],
        },
      ],
    },
  ],
};

/** A broker with topics that nobody knows, which the demo has not. */
export async function givenIngest(page: Page): Promise<void> {
  await page.route('**/api/ingest', (route) => route.fulfill({ json: INGEST }));
}
