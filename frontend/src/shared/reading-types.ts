/** Shapes of tables of the past and of what came in. */
import type { Code, Instant } from './api-types';

/** Of a table: a sensor, or a house with what is measured. */
export interface TableColumn {
  readonly column: string;
  readonly sensor?: Code;
  readonly house?: Code;
  readonly quantity?: string;
  readonly unit?: string;
}

/** A table and how it is to be read. Without a zone every time carries its offset; without a format it is ISO 8601. */
export interface TableQuestion {
  readonly csv: string;
  readonly separator: string;
  readonly decimal: string;
  readonly timeColumn: string;
  readonly timeFormat?: string;
  readonly zone?: string;
  readonly columns: readonly TableColumn[];
}

export type TableOutcome = 'refused' | 'set-aside' | 'flagged' | 'noted';

/** What there is to say of one cell or line. Line 0: of a reading that was here before. */
export interface TableLine {
  readonly line: number;
  readonly column: string | null;
  readonly outcome: TableOutcome;
  readonly kind: string | null;
  readonly reason: string;
}

/** What was, or in a dry run would be, made of a table. */
export interface TableReport {
  readonly dryRun: boolean;
  readonly rows: number;
  readonly readings: number;
  readonly accepted: number;
  readonly duplicates: number;
  readonly refused: number;
  readonly flagged: number;
  readonly lines: readonly TableLine[];
  readonly moreLines: boolean;
}

export interface IngestFault {
  readonly kind: string;
  readonly count: number;
  readonly last: readonly { readonly what: string; readonly reason: string; readonly at: Instant }[];
}

export interface IngestWay {
  readonly way: string;
  readonly received: number;
  readonly stored: number;
  readonly duplicates: number;
  readonly faults: readonly IngestFault[];
}

/** A topic that no sensor has, with its newest message. */
export interface UnknownTopic {
  readonly topic: string;
  readonly count: number;
  readonly last: string;
  readonly at: Instant;
}

/** A message that could not be stored although the database works. */
export interface RefusedMessage {
  readonly id: string;
  readonly topic: string;
  readonly payload: string;
  readonly reason: string;
  readonly at: Instant;
}

/** Of all servers together, ever; `mqtt` is how it stands with the one that was asked. */
export interface Ingest {
  readonly refused: { readonly count: number; readonly last: readonly RefusedMessage[] };
  readonly unknownTopics: readonly UnknownTopic[];
  readonly ways: readonly IngestWay[];
  readonly mqtt: {
    readonly state: 'off' | 'standby' | 'connecting' | 'connected';
    readonly broker: string | null;
    readonly waiting: number;
    readonly lastConnectedAt: Instant | null;
    readonly reconnects: number;
    readonly lastError: string | null;
  };
}
