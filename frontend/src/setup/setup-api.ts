import type { Schemas } from '../shared/contract';
import { answer, api, once } from '../shared/http';
import type { Item, ItemOf, ListName } from './setup-state';

interface Writer<T> {
  readonly create: (body: T, key: string) => Promise<unknown>;
  readonly change: (code: string, body: T) => Promise<unknown>;
}

const created = (key: string) => ({ header: once(key) });
const changed = (code: string) => ({ path: { code } });

const WRITERS: { readonly [List in ListName]: Writer<ItemOf[List]> } = {
  sites: {
    create: (body, key) => answer(api.POST('/api/sites', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/sites/{code}', { params: changed(code), body })),
  },
  houses: {
    create: (body, key) => answer(api.POST('/api/houses', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/houses/{code}', { params: changed(code), body })),
  },
  'tray-formats': {
    create: (body, key) => answer(api.POST('/api/tray-formats', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/tray-formats/{code}', { params: changed(code), body })),
  },
  crops: {
    create: (body, key) => answer(api.POST('/api/crops', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/crops/{code}', { params: changed(code), body })),
  },
  varieties: {
    create: (body, key) => answer(api.POST('/api/varieties', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/varieties/{code}', { params: changed(code), body })),
  },
  sensors: {
    create: (body, key) => answer(api.POST('/api/sensors', { params: created(key), body })),
    change: (code, body) => answer(api.PUT('/api/sensors/{code}', { params: changed(code), body })),
  },
};

/** The form makes an item from its list of fields, whose names are checked there; its values the server judges. */
type Typed = Schemas['SiteWire'] &
  Schemas['HouseWire'] &
  Schemas['TrayFormatWire'] &
  Schemas['CropWire'] &
  Schemas['VarietyWire'] &
  Schemas['SensorWire'];

export function createItem(list: ListName, item: Item, idempotencyKey: string): Promise<unknown> {
  return WRITERS[list].create(item as unknown as Typed, idempotencyKey);
}

export function changeItem(list: ListName, code: string, item: Item): Promise<unknown> {
  return WRITERS[list].change(code, item as unknown as Typed);
}
