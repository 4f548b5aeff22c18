import type { Ingest, IngestWay } from '../shared/reading-types';

/** A topic that no sensor has, as it was last heard. */
export interface UnknownTopic {
  readonly topic: string;
  readonly message: string;
  readonly at: string;
}

const KIND = 'unknown-topic';

export function unknownMessages({ ways }: Ingest): number {
  return faultsOf(ways, KIND).reduce((sum, { count }) => sum + count, 0);
}

/**
 * The topics among the last messages that no sensor took, newest first. The server keeps `topic: message` of the last
 * few only, so there may be more topics than these.
 */
export function unknownTopics({ ways }: Ingest): UnknownTopic[] {
  const byTopic = new Map<string, UnknownTopic>();
  for (const { what, at } of faultsOf(ways, KIND).flatMap(({ last }) => last)) {
    // A message of such a topic was readable: a number, or an object. A topic that was cut short is of no use.
    const { topic, message } = /^(?<topic>.+?): (?<message>[-+.\d{].*)$/s.exec(what)?.groups ?? {};
    if (topic === undefined || message === undefined) continue;
    const known = byTopic.get(topic);
    if (!known || known.at < at) byTopic.set(topic, { topic, message, at });
  }
  return [...byTopic.values()].sort((a, b) => (a.at < b.at ? 1 : -1));
}

function faultsOf(ways: readonly IngestWay[], kind: string) {
  return ways.flatMap(({ faults }) => faults.filter((fault) => fault.kind === kind));
}

export function notStored({ faults }: IngestWay): number {
  return faults.reduce((sum, { count }) => sum + count, 0);
}

/** The address of a form for a new sensor that reports under `topic`. */
export function sensorFrom(topic: string): string {
  return `/setup/sensors/~new?${new URLSearchParams({ topic })}`;
}
