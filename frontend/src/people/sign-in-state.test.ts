import { describe, expect, test } from 'vitest';
import {
  checkedOwner,
  checkedSignIn,
  clockOf,
  handOverAddress,
  isHandOver,
  isSignInName,
  nextIn,
  passwordFault,
  passwordFaults,
  secondsLeft,
  signInAddress,
  signInRefusal,
} from './sign-in-state';

describe('the address to come back to', () => {
  test.each(['/floor?site=north&batch=B%201', '/board?weeks=12', '/', '/sign-in-sheet'])('%s is kept', (next) => {
    expect(nextIn(new URLSearchParams({ next }))).toBe(next);
  });

  test.each([
    'https://elsewhere.example/',
    '//elsewhere.example/',
    '/\\elsewhere.example',
    '/\t/elsewhere.example',
    'board',
    '',
    '/sign-in?next=/board',
    '/sign-in',
  ])('%j leads away or round in a circle', (next) => {
    expect(nextIn(new URLSearchParams({ next }))).toBeUndefined();
  });

  test('survives the way through the address', () => {
    const next = '/floor?site=a&batch=B 1';
    expect(nextIn(new URL(signInAddress(next), 'http://x').searchParams)).toBe(next);
    const handed = new URL(handOverAddress(next), 'http://x').searchParams;
    expect(nextIn(handed)).toBe(next);
    expect(isHandOver(handed)).toBe(true);
    expect(isHandOver(new URL(signInAddress(next), 'http://x').searchParams)).toBe(false);
  });
});

describe('signing in', () => {
  test('marks what is empty and sends nothing', () => {
    expect(checkedSignIn({ name: ' ', password: '' })).toEqual({ faults: { name: 'needed', password: 'needed' } });
    expect(checkedSignIn({ name: 'ana', password: '' })).toEqual({ faults: { password: 'needed' } });
  });

  test('takes spaces off the name and none off the password', () => {
    expect(checkedSignIn({ name: ' ana ', password: ' p w ' })).toEqual({ body: { name: 'ana', password: ' p w ' } });
  });

  test('reads a refusal', () => {
    expect(signInRefusal(401, {})).toEqual({ kind: 'wrong' });
    expect(signInRefusal(429, { retryAfterSeconds: 29.2 })).toEqual({ kind: 'locked', seconds: 30 });
    expect(signInRefusal(429, {})).toEqual({ kind: 'locked', seconds: 1 });
    expect(signInRefusal(503, {})).toEqual({ kind: 'other' });
  });

  test('counts down to nothing and not below', () => {
    expect([10_000, 10_999, 11_000, 40_000, 41_000].map((nowMs) => secondsLeft(40_000, nowMs))).toEqual([
      30, 30, 29, 0, 0,
    ]);
    expect([0, 7, 90, 3725].map(clockOf)).toEqual(['0:00', '0:07', '1:30', '62:05']);
  });
});

describe('a password', () => {
  test('is long enough and typed twice alike', () => {
    expect(passwordFaults({ password: '', again: '' }, 'ana')).toEqual({ password: 'needed' });
    expect(passwordFaults({ password: 'nine sign', again: 'nine sign' }, 'ana')).toEqual({ password: 'short' });
    expect(passwordFaults({ password: 'ten signs!', again: '' }, 'ana')).toEqual({ again: 'needed' });
    expect(passwordFaults({ password: 'ten signs!', again: 'ten signs?' }, 'ana')).toEqual({ again: 'unequal' });
    expect(passwordFaults({ password: 'ten signs!', again: 'ten signs!' }, 'ana')).toEqual({});
  });

  test('is counted in signs, not in halves of them', () => {
    expect(passwordFaults({ password: '🌱🌱🌱🌱🌱', again: '' }, 'ana')).toEqual({ password: 'short' });
  });
});

describe('a password for somebody', () => {
  test('is not their name', () => {
    expect(passwordFault(' Ana.Ruiz.north ', 'ana.ruiz.NORTH')).toBe('is-name');
    expect(passwordFault('Ana.Ruiz.north1', 'ana.ruiz.NORTH')).toBeUndefined();
  });

  // 72 bytes is where bcrypt stops reading; ñ takes two of them.
  test('is not longer than its hash reads', () => {
    expect(passwordFault('ñ'.repeat(36), 'ana')).toBeUndefined();
    expect(passwordFault('ñ'.repeat(36) + 'n', 'ana')).toBe('long');
  });
});

describe('a name to sign in with', () => {
  test.each(['ana', 'ana.ruiz@north', 'Íñigo_2', '7'])('%s will do', (name) => expect(isSignInName(name)).toBe(true));
  test.each(['', 'ana ruiz', '.ana', 'a/b', 'a'.repeat(65)])('%j will not', (name) =>
    expect(isSignInName(name)).toBe(false),
  );
});

describe('the first owner', () => {
  const draft = {
    secret: ' XK4-221 ',
    name: ' rosa ',
    displayName: ' Rosa Vidal ',
    password: 'long enough',
    again: 'long enough',
  };

  test('is sent without stray spaces', () => {
    expect(checkedOwner(draft)).toEqual({
      body: { secret: 'XK4-221', name: 'rosa', displayName: 'Rosa Vidal', password: 'long enough' },
    });
  });

  test('is told everything that is wrong at once', () => {
    expect(checkedOwner({ ...draft, secret: '', name: 'rosa vidal', displayName: ' ', again: 'other' })).toEqual({
      faults: { secret: 'needed', name: 'name', displayName: 'needed', again: 'unequal' },
    });
  });
});
