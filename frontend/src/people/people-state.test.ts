import { describe, expect, test } from 'vitest';
import { changeOf, checkedNew, detailOf, linesOf, NEW_PERSON, shownKeys, shownPeople } from './people-state';
import type { AuditLine, Grant, KeyView, PersonView } from './people-types';

const sales: Grant = { role: 'SALES', site: null };
const north: Grant = { role: 'PRODUCTION', site: 'north' };
const person = (name: string, displayName: string, active = true): PersonView => ({
  name,
  displayName,
  active,
  signsInWith: 'password',
  createdAt: '2026-11-01T08:00:00Z',
  grants: [sales, north],
});
const ana = person('ana', 'Ana Ruiz');

describe('a new person', () => {
  const draft = { name: ' ben ', displayName: ' Ben Okafor ', password: 'a short song', grants: [sales] };

  test('is sent without stray spaces, the password as typed', () => {
    expect(checkedNew(draft, [ana])).toEqual({
      person: { name: 'ben', displayName: 'Ben Okafor', password: 'a short song', grants: [sales] },
    });
  });

  test('is told everything that is missing at once', () => {
    expect(checkedNew(NEW_PERSON, [])).toEqual({
      faults: { name: 'needed', displayName: 'needed', password: 'needed' },
    });
  });

  test('cannot have a name that another has, whatever its capitals', () => {
    expect(checkedNew({ ...draft, name: 'ANA' }, [ana])).toEqual({ faults: { name: 'taken' } });
    expect(checkedNew({ ...draft, name: 'ana maria' }, [ana])).toEqual({ faults: { name: 'name' } });
  });
});

describe('a changed person', () => {
  test('is not sent when nothing is different', () => {
    expect(changeOf(ana, ' Ana Ruiz ', [north, sales], true)).toBeUndefined();
  });

  test('is sent whole', () => {
    expect(changeOf(ana, 'Ana R.', [sales], false)).toEqual({ displayName: 'Ana R.', grants: [sales], active: false });
  });
});

test('people are found by either name; those who cannot sign in come last', () => {
  const all = [person('zoe', 'Zoe Adler', false), person('ben', 'Ben Okafor'), ana];
  expect(shownPeople(all, '').map(({ name }) => name)).toEqual(['ana', 'ben', 'zoe']);
  expect(shownPeople(all, 'OKA').map(({ name }) => name)).toEqual(['ben']);
});

test('keys that still work come first, the newest on top', () => {
  const key = (id: string, createdAt: string, endedAt: string | null): KeyView => ({
    id,
    name: id,
    grants: [],
    createdAt,
    createdBy: 'rosa',
    lastUsedAt: null,
    endedAt,
  });
  const keys = [
    key('ended', '2026-11-20T00:00:00Z', '2026-11-21T00:00:00Z'),
    key('old', '2026-10-01T00:00:00Z', null),
    key('new', '2026-11-01T00:00:00Z', null),
  ];
  expect(shownKeys(keys).map(({ id }) => id)).toEqual(['new', 'old', 'ended']);
});

test('a line at the seam of two pages stands once', () => {
  const line = (at: string, what: string): AuditLine => ({ at, who: 'ana', what, detail: '', from: '10.0.0.1' });
  const [a, b, c] = [line('3', 'x'), line('2', 'y'), line('2', 'z')];
  expect(
    linesOf([
      [a, b],
      [b, c],
    ]),
  ).toEqual([a, b, c]);
});

describe('the detail of an audit line', () => {
  const words = { SALES: 'Ventas', PRODUCTION: 'Producción' } as Readonly<Record<string, string>>;
  const said = (what: string, detail: string) =>
    detailOf({ at: '2026-11-01T08:00:00Z', who: 'x', from: '', what, detail }, (role) => words[role] ?? '?', 'apagada');

  test('has roles in the reader’s words, not by their codes', () => {
    expect(said('person-changed', 'ben: SALES PRODUCTION@north, switched off')).toBe(
      'ben: Ventas, Producción (north), apagada',
    );
    expect(said('key-made', 'logger: SALES')).toBe('logger: Ventas');
  });

  test('is left out where the kind says it and the server would add English', () => {
    expect(said('sign-in-failed', 'wrong name or password')).toBe('');
    expect(said('no-right', 'GET /api/keys')).toBe('GET /api/keys');
  });
});
