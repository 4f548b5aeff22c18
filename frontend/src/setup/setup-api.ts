import { at, postJson, putJson } from '../shared/http';
import type { Item, ListName } from './setup-state';

export function createItem(list: ListName, item: Item, idempotencyKey: string): Promise<unknown> {
  return postJson(at`/${list}`, item, idempotencyKey);
}

export function changeItem(list: ListName, code: string, item: Item): Promise<unknown> {
  return putJson(at`/${list}/${code}`, item);
}
