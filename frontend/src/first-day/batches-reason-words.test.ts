import { expect, it } from 'vitest';
import type { BatchCsvLine } from '../shared/api-types';
import { formatsFor } from '../shared/formats';
import { batchReasonMessages } from './batches-reason-messages';
import { reasonSaid } from './batches-reason-words';

const line = (kind: string, asked: string | null): BatchCsvLine => ({
  line: 2,
  outcome: 'refused',
  kind,
  column: 'trays',
  asked,
  booked: null,
  least: null,
  most: null,
  expectedAt: null,
  reason: 'English of the server.',
});

it('says why a line is not taken in the reader’s words and figures', () => {
  const format = formatsFor({ language: 'en', temperature: 'C' });
  expect(reasonSaid(line('trays', '25000'), batchReasonMessages.en, format)).toMatch(/^25,000 trays: /);
});

it('says a kind that the screen does not know by its code, never in the server’s English', () => {
  const format = formatsFor({ language: 'es', temperature: 'C' });
  const said = reasonSaid(line('moon-phase', '3'), batchReasonMessages.es, format);
  expect(said).toContain('moon-phase');
  expect(said).toMatch(/^El servidor/);
  expect(said).not.toContain('English');
});
