import type { BoardBody, BoardKey, CellExplanation, Instant, IsoWeek, NewOrder, OrderView } from '../shared/api-types';
import { answer, api, once } from '../shared/http';

export interface BoardRequest {
  readonly from: IsoWeek | undefined;
  readonly weeks: number;
  readonly confidence: number;
  readonly site: string | undefined;
  readonly crop: string | undefined;
  /** The moment looked back to; undefined is now. */
  readonly asOf: Instant | undefined;
}

export function loadBoard(request: BoardRequest, signal?: AbortSignal): Promise<BoardBody> {
  const { from, weeks, confidence, site, crop, asOf } = request;
  const query = { from, weeks: String(weeks), confidence: String(confidence), site, crop, asOf };
  return answer(api.GET('/api/board', { params: { query }, signal }));
}

export interface CellRequest extends BoardKey {
  readonly week: IsoWeek;
  readonly confidence: number;
  readonly asOf: Instant | undefined;
}

export function loadCell(request: CellRequest, signal?: AbortSignal): Promise<CellExplanation> {
  const { variety, trayFormat, site, week, confidence, asOf } = request;
  const query = { variety, trayFormat, site, week, confidence: String(confidence), asOf };
  return answer(api.GET('/api/board/cell', { params: { query }, signal }));
}

export function placeOrder(order: NewOrder, idempotencyKey: string): Promise<OrderView> {
  return answer(api.POST('/api/orders', { params: { header: once(idempotencyKey) }, body: order }));
}

export async function releaseOrder(id: string): Promise<void> {
  await answer(api.DELETE('/api/orders/{id}', { params: { path: { id } } }));
}
