import type { Instant } from '../shared/api-types';

/** People, keys and sessions as the server sends and takes them. */

export type PersonRole = 'SALES' | 'PRODUCTION' | 'MANAGER' | 'OWNER';
export type KeyRole = 'DEVICE' | 'PARTNER';
export type Role = PersonRole | KeyRole;

/** A role at one site, or at all of them (`null`). */
export interface Grant<R extends Role = Role> {
  readonly role: R;
  readonly site: string | null;
}

/** Who is signed in. */
export interface Session {
  readonly name: string;
  readonly displayName: string;
  readonly grants: readonly Grant[];
}

/** One sign-in of the person, on one device. */
export interface OpenSession {
  readonly id: string;
  readonly begunAt: Instant;
  readonly lastSeenAt: Instant;
  readonly device: string;
  readonly current: boolean;
}

export interface PersonView {
  readonly name: string;
  readonly displayName: string;
  readonly grants: readonly Grant[];
  readonly active: boolean;
  /** Only who signs in with a password here has one to be changed. */
  readonly signsInWith?: 'password' | 'directory' | 'demo';
}

export interface NewPerson {
  readonly name: string;
  readonly displayName: string;
  readonly password: string;
  readonly grants: readonly Grant[];
}

export type ChangedPerson = Pick<PersonView, 'displayName' | 'grants' | 'active'>;

export interface KeyView {
  readonly id: string;
  readonly name: string;
  readonly grants: readonly Grant[];
  readonly createdAt: Instant;
  readonly createdBy: string;
  readonly lastUsedAt?: Instant | null;
  readonly endedAt?: Instant | null;
}

/** `key` is said this once and kept nowhere. */
export interface NewKeyView {
  readonly id: string;
  readonly key: string;
}

export interface AuditLine {
  readonly at: Instant;
  readonly who: string;
  readonly what: string;
  readonly detail: string;
  readonly from: string;
}

export type Door = 'sales' | 'production' | 'manager';

export interface FirstOwner {
  readonly secret: string;
  readonly name: string;
  readonly displayName: string;
  readonly password: string;
}
