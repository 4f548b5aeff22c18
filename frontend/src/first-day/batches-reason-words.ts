import type { BatchCsvLine } from '../shared/api-types';
import type { Formats } from '../shared/formats';
import type { batchReasonMessages, Said } from './batches-reason-messages';

type Reasons = (typeof batchReasonMessages)['en'];

/** Why a line is not taken, or is doubted, in the reader's words; a kind that is not known here by its code. */
export function reasonSaid(line: BatchCsvLine, reasons: Reasons, format: Formats): string {
  const figure = (value: number | null) => (value === null ? '' : format.integer(value));
  const whole = line.asked !== null && /^\d+$/.test(line.asked) ? format.integer(Number(line.asked)) : line.asked;
  const { unknownKind, ...known } = reasons;
  const say = (known as Readonly<Record<string, (said: Said) => string>>)[line.kind];
  if (!say) return unknownKind(line.kind);
  return say({
    asked: whole ?? '',
    booked: figure(line.booked),
    least: figure(line.least),
    most: figure(line.most),
    expected: line.expectedAt === null ? '' : format.dayOf(line.expectedAt),
  });
}
