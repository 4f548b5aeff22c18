import type { BatchCsvQuestion, BatchCsvReport, House, Site, TrayFormat } from '../shared/api-types';
import { answer, api, once } from '../shared/http';

/** Does the whole work and takes it back: nothing is written. */
export function previewBatches(question: BatchCsvQuestion): Promise<BatchCsvReport> {
  return answer(api.POST('/api/batches/csv', { params: { query: { dryRun: true } }, body: question }));
}

export function importBatches(question: BatchCsvQuestion, idempotencyKey: string): Promise<BatchCsvReport> {
  return answer(
    api.POST('/api/batches/csv', {
      params: { query: { dryRun: false }, header: once(idempotencyKey) },
      body: question,
    }),
  );
}

export function takeSeededCrops(crops: readonly string[], idempotencyKey: string): Promise<unknown> {
  return answer(api.POST('/api/seeded-crops', { params: { header: once(idempotencyKey) }, body: { crops } }));
}

/** The site, then its house; each once under its own key, however often this is tried. */
export async function makePlace(site: Site, house: House, keys: readonly [string, string]): Promise<void> {
  await answer(api.POST('/api/sites', { params: { header: once(keys[0]) }, body: site }));
  await answer(api.POST('/api/houses', { params: { header: once(keys[1]) }, body: house }));
}

export function makeTrayFormat(format: TrayFormat, idempotencyKey: string): Promise<unknown> {
  return answer(api.POST('/api/tray-formats', { params: { header: once(idempotencyKey) }, body: format }));
}
