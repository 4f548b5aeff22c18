import { expect, test } from 'vitest';
import type { Session } from './people-types';
import { gateOf } from './session-state';

const ana: Session = { name: 'ana', displayName: 'Ana Ruiz', grants: [{ role: 'PRODUCTION', site: 'north' }] };
const ben: Session = { name: 'ben', displayName: 'Ben Okafor', grants: [] };
const nothing = { answer: undefined, failed: false, shown: undefined, remembered: undefined };

test('a page that has just been loaded waits for the answer only where nobody was here before', () => {
  expect(gateOf(nothing)).toEqual({ kind: 'asking' });
  expect(gateOf({ ...nothing, remembered: ana })).toEqual({ kind: 'open', session: ana });
});

test('nobody signed in: the way leads to the sign-in', () => {
  expect(gateOf({ ...nothing, answer: null, remembered: ana })).toEqual({ kind: 'shut' });
});

test('a session that ends leaves the screen to the one who was working', () => {
  expect(gateOf({ ...nothing, answer: null, shown: ana })).toEqual({ kind: 'ended', session: ana });
});

test('the server’s word counts more than what is on the screen', () => {
  expect(gateOf({ ...nothing, answer: ben, shown: ana, remembered: ana })).toEqual({ kind: 'open', session: ben });
});

test('a server that does not answer stops nobody who was here, and lets in nobody who was not', () => {
  expect(gateOf({ ...nothing, failed: true, remembered: ana })).toEqual({ kind: 'open', session: ana });
  expect(gateOf({ ...nothing, failed: true })).toEqual({ kind: 'failed' });
});
