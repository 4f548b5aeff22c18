import { expect, it } from 'vitest';
import { notStored, sensorFrom } from './ingest-state';

it('counts all that is not in the series', () => {
  const fault = (kind: string, count: number) => ({ kind, count, last: [] });
  const faults = [fault('malformed', 2), fault('unknown-topic', 12)];
  expect(notStored({ way: 'mqtt', received: 40, stored: 25, duplicates: 1, faults })).toBe(14);
});

it('leads to a form that holds the topic', () => {
  expect(sensorFrom('range/2/a b&c')).toBe('/setup/sensors/~new?topic=range%2F2%2Fa+b%26c');
});
