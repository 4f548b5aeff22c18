import type { BoardBody, BoardKey, CellExplanation, Instant, IsoWeek, NewOrder, OrderView } from '../shared/api-types';
import { at, deleteAt, getJson, postJson } from '../shared/http';

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
  return getJson(at`/board`, { ...request }, signal);
}

export interface CellRequest extends BoardKey {
  readonly week: IsoWeek;
  readonly confidence: number;
  readonly asOf: Instant | undefined;
}

export function loadCell(request: CellRequest, signal?: AbortSignal): Promise<CellExplanation> {
  return getJson(at`/board/cell`, { ...request }, signal);
}

export function placeOrder(order: NewOrder, idempotencyKey: string): Promise<OrderView> {
  return postJson(at`/orders`, order, idempotencyKey);
}

export function releaseOrder(id: string): Promise<void> {
  return deleteAt(at`/orders/${id}`);
}
