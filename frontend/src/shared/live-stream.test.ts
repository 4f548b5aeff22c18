import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { LiveStream, REST_AFTER_MS, STALE_AFTER_MS } from './live-stream';
import { onUnauthorised } from './unauthorised';

/** Stands in for the browser's: remembers where it was opened and lets the test speak as the server. */
class FakeSource {
  static all: FakeSource[] = [];
  readonly listeners = new Map<string, (message: { data: string }) => void>();
  onerror: () => void = () => undefined;
  closed = false;
  /** What the browser says of a line that broke: CONNECTING. */
  readyState = 0;

  constructor(readonly url: string) {
    FakeSource.all.push(this);
  }

  addEventListener(name: string, listener: (message: { data: string }) => void) {
    this.listeners.set(name, listener);
  }

  close() {
    this.closed = true;
  }

  say(name: string, event: object) {
    this.listeners.get(name)?.({ data: JSON.stringify(event) });
  }

  static get last(): FakeSource {
    const source = FakeSource.all.at(-1);
    if (!source) throw new Error('no stream was opened');
    return source;
  }
}

const after = () => new URL(FakeSource.last.url, 'http://x').searchParams.get('after');

describe('the live stream', () => {
  let stream: LiveStream;
  let stop: () => void;
  const heard = new Map<string, () => void>();
  const become = (visibilityState: 'hidden' | 'visible') => {
    vi.stubGlobal('document', { visibilityState });
    heard.get('visibilitychange')?.();
  };

  beforeEach(() => {
    vi.useFakeTimers({ now: 0 });
    FakeSource.all = [];
    vi.stubGlobal('EventSource', FakeSource);
    vi.stubGlobal('navigator', { onLine: true });
    vi.stubGlobal('document', { visibilityState: 'visible' });
    vi.stubGlobal('addEventListener', (name: string, listener: () => void) => heard.set(name, listener));
    vi.stubGlobal('removeEventListener', () => undefined);
    stream = new LiveStream();
    stop = stream.start();
  });

  afterEach(() => {
    stop();
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  it('resumes after a break from the last change it heard', () => {
    FakeSource.last.say('hello', { position: 7, asOf: '2026-11-25T09:00:00Z' });
    FakeSource.last.say('orders', { position: 9 });
    FakeSource.last.onerror();
    expect(stream.currentStatus().connection).toBe('connecting');
    vi.advanceTimersByTime(3_000);

    expect(FakeSource.all).toHaveLength(2);
    expect(after()).toBe('9');
  });

  it('gives its connection back while nobody looks, and goes on from where it was', () => {
    FakeSource.last.say('orders', { position: 9 });
    become('hidden');
    vi.advanceTimersByTime(REST_AFTER_MS - 1);
    become('visible');
    vi.advanceTimersByTime(REST_AFTER_MS);
    expect(FakeSource.all.filter(({ closed }) => !closed)).toHaveLength(1);

    become('hidden');
    vi.advanceTimersByTime(REST_AFTER_MS + STALE_AFTER_MS + 5_000);
    expect(FakeSource.all.filter(({ closed }) => !closed)).toHaveLength(0);

    become('visible');
    expect(FakeSource.all.filter(({ closed }) => !closed)).toHaveLength(1);
    expect(after()).toBe('9');
  });

  it('lets ask who is signed in when it is refused, and not when the line breaks', () => {
    let asked = 0;
    const leave = onUnauthorised(() => asked++);
    FakeSource.last.onerror();
    expect(asked).toBe(0);
    vi.advanceTimersByTime(3_000);
    FakeSource.last.readyState = 2;
    FakeSource.last.onerror();
    leave();
    expect(asked).toBe(1);
  });

  it('goes on after it was ended from the last change it heard, and is not called live in between', () => {
    FakeSource.last.say('orders', { position: 9 });
    stop();
    expect(stream.currentStatus().connection).toBe('connecting');
    vi.advanceTimersByTime(60_000);
    expect(FakeSource.all.filter(({ closed }) => !closed)).toHaveLength(0);
    stop = stream.start();
    expect(FakeSource.all).toHaveLength(2);
    expect(after()).toBe('9');
  });

  it('does not skip what a greeting only announces', () => {
    stream.showBoard({ weeks: 12 }, 40);
    FakeSource.last.say('hello', { position: 50, asOf: '2026-11-25T09:00:00Z' });
    FakeSource.last.onerror();
    vi.advanceTimersByTime(3_000);

    expect(after()).toBe('40');
  });

  it('goes back to a board that was loaded before what has been heard', () => {
    stream.showBoard({ weeks: 12 }, 40);
    FakeSource.last.say('batches', { position: 45, ids: [] });
    stream.showBoard({ weeks: 12 }, 42);

    expect(after()).toBe('42');
  });

  it('leaves a stream alone that already follows the board shown', () => {
    stream.showBoard({ weeks: 12 }, 40);
    FakeSource.last.say('hello', { position: 40, asOf: '2026-11-25T09:00:00Z' });
    const opened = FakeSource.all.length;
    stream.showBoard({ weeks: 12 }, 40);

    expect(FakeSource.all).toHaveLength(opened);
  });

  it('calls itself stale and asks again when nothing has been heard for three beats', () => {
    FakeSource.last.say('beat', { at: '2026-11-25T09:00:00Z', asOf: '2026-11-25T09:00:00Z' });
    expect(stream.currentStatus().connection).toBe('live');
    vi.advanceTimersByTime(STALE_AFTER_MS + 5_000);

    expect(stream.currentStatus().connection).toBe('stale');
    expect(FakeSource.all[0]?.closed).toBe(true);
    expect(FakeSource.all).toHaveLength(2);
  });

  it('tells how old the figures are by the clock of the server, also over a line that works', () => {
    FakeSource.last.say('beat', { at: '2026-11-25T09:43:30Z', asOf: '2026-11-25T09:41:00Z' });
    expect(stream.currentStatus()).toMatchObject({
      connection: 'live',
      asOf: '2026-11-25T09:41:00Z',
      behindMs: 150_000,
    });
    FakeSource.last.say('hello', { position: 7, asOf: '2026-11-25T09:41:00Z' });
    expect(stream.currentStatus().behindMs).toBe(150_000);
    FakeSource.last.say('board', { position: 8, asOf: '2026-11-25T09:43:31Z', rows: [] });
    expect(stream.currentStatus()).toMatchObject({ asOf: '2026-11-25T09:43:31Z', behindMs: 0 });
  });

  it('tells each listener until it leaves', () => {
    const heard: number[] = [];
    const leave = stream.on('orders', ({ position }) => heard.push(position));
    FakeSource.last.say('orders', { position: 1 });
    leave();
    FakeSource.last.say('orders', { position: 2 });

    expect(heard).toEqual([1]);
  });
});
