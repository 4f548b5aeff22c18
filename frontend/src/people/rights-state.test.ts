import { describe, expect, test } from 'vitest';
import type { Grant, Role } from './people-types';
import { may, mayGo, onlySite, rightFor, RIGHT_OF_ROOM, startFor, type Right } from './rights-state';

const everywhere = (role: Role): readonly Grant[] => [{ role, site: null }];
const at = (role: Role, site: string): Grant => ({ role, site });

describe('the table of rights', () => {
  // From the access rules of the business; a row per right, a column per role.
  const table: readonly (readonly [Right, string])[] = [
    //          sales production manager owner device partner
    ['read', '   yes   yes        yes     yes   no     no'],
    ['record', ' no    yes        yes     yes   no     no'],
    ['sell', '   yes   no         yes     yes   no     no'],
    ['set-up', ' no    no         yes     yes   no     no'],
    ['people', ' no    no         no      yes   no     no'],
  ];
  const roles: readonly Role[] = ['SALES', 'PRODUCTION', 'MANAGER', 'OWNER', 'DEVICE', 'PARTNER'];

  test.each(table)('%s', (right, row) => {
    expect(roles.map((role) => (may(everywhere(role), right) ? 'yes' : 'no'))).toEqual(row.trim().split(/\s+/));
  });

  test('a grant for one site holds there and nowhere else', () => {
    const north = [at('PRODUCTION', 'north')];
    expect(may(north, 'record', 'north')).toBe(true);
    expect(may(north, 'record', 'south')).toBe(false);
    expect(may(north, 'record')).toBe(true);
  });

  test('a grant for all sites holds at each', () => {
    expect(may(everywhere('PRODUCTION'), 'record', 'south')).toBe(true);
  });

  test('a role at one site lends nothing to another role at another', () => {
    const mixed = [at('PRODUCTION', 'north'), at('SALES', 'south')];
    expect(may(mixed, 'record', 'south')).toBe(false);
    expect(may(mixed, 'sell', 'north')).toBe(false);
    expect(may(mixed, 'sell', 'south')).toBe(true);
  });

  test('nobody may do anything without a grant', () => {
    expect((['read', 'record', 'sell', 'set-up', 'people'] as const).filter((right) => may([], right))).toEqual([]);
  });
});

describe('addresses', () => {
  test('need what their room needs, however deep they go', () => {
    expect(rightFor('/batches/B-12')).toBe('read');
    expect(rightFor('/setup/crops/SAGE/profiles/3')).toBe('set-up');
    expect(rightFor('/setup/people/~new')).toBe('people');
    expect(rightFor('/setup/audit')).toBe('people');
    expect(rightFor('/setup/changes')).toBe('people');
    expect(rightFor('/account/sessions')).toBeUndefined();
    expect(rightFor('/constructor')).toBeUndefined();
  });

  test.each([
    ['SALES', ['floor', 'what-if', 'setup']],
    ['PRODUCTION', ['what-if', 'setup']],
    ['MANAGER', []],
    ['OWNER', []],
  ] as const)('%s is not offered %j', (role, closed) => {
    const rooms = Object.keys(RIGHT_OF_ROOM).filter((room) => !mayGo(everywhere(role), `/${room}`));
    expect(rooms).toEqual(closed);
  });

  test('a manager sets up but does not give rights', () => {
    expect(mayGo(everywhere('MANAGER'), '/setup/crops')).toBe(true);
    expect(mayGo(everywhere('MANAGER'), '/setup/people')).toBe(false);
  });
});

describe('where work begins', () => {
  test.each([
    [everywhere('SALES'), '/board'],
    [everywhere('PRODUCTION'), '/floor'],
    [everywhere('MANAGER'), '/board'],
    [everywhere('OWNER'), '/board'],
    [[...everywhere('PRODUCTION'), ...everywhere('SALES')], '/board'],
    [[at('PRODUCTION', 'north')], '/floor?site=north'],
    [[at('SALES', 'a b')], '/board?site=a%20b'],
    [[at('PRODUCTION', 'north'), at('PRODUCTION', 'south')], '/floor'],
  ] as const)('%j begins on %s', (grants, path) => {
    expect(startFor(grants)).toBe(path);
  });

  test('an empty business begins with being set up, by those who may', () => {
    expect(startFor(everywhere('OWNER'), true)).toBe('/setup/first-day');
    expect(startFor(everywhere('PRODUCTION'), true)).toBe('/floor');
  });

  test('the one site of all grants', () => {
    expect(onlySite([at('PRODUCTION', 'north'), at('SALES', 'north')])).toBe('north');
    expect(onlySite([at('PRODUCTION', 'north'), { role: 'SALES', site: null }])).toBeUndefined();
    expect(onlySite([])).toBeUndefined();
  });
});
