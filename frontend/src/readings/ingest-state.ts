import type { IngestWay } from '../shared/reading-types';

export function notStored({ faults }: IngestWay): number {
  return faults.reduce((sum, { count }) => sum + count, 0);
}

/** The address of a form for a new sensor that reports under `topic`. */
export function sensorFrom(topic: string): string {
  return `/setup/sensors/~new?${new URLSearchParams({ topic })}`;
}
