import type { Schemas } from '../shared/contract';

/** People, keys and sessions, by the names the screens use. */

export type Role = Schemas['Role'];
export type KeyRole = Extract<Role, 'DEVICE' | 'PARTNER'>;
export type PersonRole = Exclude<Role, KeyRole>;

/** A role at one site, or at all of them (`null`, or left out). */
export interface Grant<R extends Role = Role> {
  readonly role: R;
  readonly site?: string | null;
}

/** Who is signed in. */
export type Session = Schemas['MeWire'];
/** One sign-in of the person, on one device. */
export type OpenSession = Schemas['SessionWire'];
export type PersonView = Schemas['PersonWire'];
export type NewPerson = Schemas['NewPersonWire'];
export type ChangedPerson = Schemas['PersonChangeWire'];
export type KeyView = Schemas['KeyWire'];
/** `key` is said this once and kept nowhere. */
export type NewKeyView = Schemas['MadeKeyWire'];
export type AuditLine = Schemas['AuditLine'];
export type FirstOwner = Schemas['OwnerWire'];

export type Door = 'sales' | 'production' | 'manager';
