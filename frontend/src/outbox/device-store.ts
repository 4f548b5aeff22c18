import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { NewEntry } from '../shared/api-types';
import type { Sent, Waiting } from './outbox-state';

/** What is kept on the device: what waits to be sent, and the newest of what was. */
export interface DeviceSchema extends DBSchema {
  waiting: { key: number; value: Waiting; indexes: { key: string } };
  sent: { key: string; value: Sent; indexes: { seq: number } };
}

export type DeviceStore = IDBPDatabase<DeviceSchema>;

const VERSION = 2;

/** As it was kept up to version 1, when only entries of batches could wait. */
interface EntryOnly {
  readonly batch: string;
  readonly batchName: string;
  readonly entry: NewEntry;
}

export function openDeviceStore(name: string): Promise<DeviceStore> {
  return openDB<DeviceSchema>(name, VERSION, {
    async upgrade(db, before, _after, tx) {
      if (before === 0) {
        db.createObjectStore('waiting', { keyPath: 'seq', autoIncrement: true }).createIndex('key', 'key', {
          unique: true,
        });
        db.createObjectStore('sent', { keyPath: 'key' }).createIndex('seq', 'seq');
        return;
      }
      for (const store of [tx.objectStore('waiting'), tx.objectStore('sent')] as const) {
        for (const old of (await store.getAll()) as unknown as readonly (EntryOnly & (Waiting | Sent))[]) {
          const { batch, batchName, entry, ...kept } = old;
          await store.put({ ...kept, message: { to: 'batch', batch, batchName, entry } } as Waiting & Sent);
        }
      }
    },
    // Another tab brings a newer store: this one lets go of it and is told to load again by its next read.
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
