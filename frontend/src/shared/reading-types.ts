import type { Schemas } from './contract';

/** CSV import and what came in, by the names the screens use. */

/** Of a table: a sensor, or a house with what is measured. */
export type CsvColumn = Schemas['ColumnWire'];
/** A table and how it is to be read. Without a zone every time carries its offset; without a format it is ISO 8601. */
export type CsvQuestion = Schemas['CsvWire'];
export type CsvOutcome = Schemas['CsvOutcome'];
/** What there is to say of one cell or line. Line 0: of a reading that was here before. */
export type CsvLine = Schemas['CsvLine'];
/** What was, or in a dry run would be, made of a table. */
export type CsvReport = Schemas['CsvReport'];

export type IngestFault = Schemas['Fault'];
export type IngestWay = Schemas['Counted'];
/** A topic that no sensor has, with its newest message. */
export type UnknownTopic = Schemas['IngestWire']['unknownTopics'][number];
/** Of all servers together, ever; `mqtt` is how it stands with the one that was asked. */
export type Ingest = Schemas['IngestWire'];
