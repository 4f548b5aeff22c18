import { useEffect, useEffectEvent, useSyncExternalStore } from 'react';
import type { Instant, LiveEvents, Position } from './api-types';
import { queryString } from './http';
import { tellUnauthorised } from './unauthorised';

/**
 * The one event stream of the application. It opens with the app, resumes where it broke off (`after` = last position
 * seen), and knows how long it has heard nothing.
 *
 * - `useLiveStatus()`: what to tell the reader about the connection.
 * - `useLiveEvent('batches', event => …)`: what to do when something changed; ends with the component.
 * - `liveStream.showBoard(window, position)`: which weeks the board events shall cover, from which position on.
 */

export type ConnectionState = 'connecting' | 'live' | 'stale' | 'offline';

export interface LiveStatus {
  readonly connection: ConnectionState;
  /** When anything last arrived, by this device's clock (ms); undefined before the first. */
  readonly lastHeardMs: number | undefined;
  readonly position: Position | undefined;
  /** What the figures are true as of, as the server says. */
  readonly asOf: Instant | undefined;
  /** How old the figures were when the server last told, by its own clock. */
  readonly behindMs: number;
}

/** What the board events of the stream cover; the server's default when left out. */
export interface BoardWindow {
  readonly from?: string;
  readonly weeks?: number;
  readonly confidence?: number;
}

export type LiveEventName = keyof LiveEvents;
type Listener<N extends LiveEventName> = (event: LiveEvents[N]) => void;

const EVENT_NAMES: readonly LiveEventName[] = [
  'hello',
  'board',
  'removed',
  'batches',
  'orders',
  'setup',
  'snapshot',
  'beat',
  'climate',
  'warnings',
];

/** Figures older than this are said to be old although the line is up. */
export const BEHIND_AFTER_MS = 60_000;
/** Three missed beats of 10 s, and a little for the way. */
export const STALE_AFTER_MS = 32_000;
const REOPEN_AFTER_MS = 3_000;
/** `EventSource.CLOSED` */
const CLOSED = 2;
/** A browser has six connections to a server that speaks HTTP/1.1, and an open stream holds one of them. */
export const REST_AFTER_MS = 5_000;

/** Exported for its test; the application uses the one `liveStream` below. */
export class LiveStream {
  private source: EventSource | undefined;
  private window: BoardWindow = {};
  /** The last position whose change was heard; `hello` only tells how far the server is. */
  private heardUpTo: Position | undefined;
  private reopenTimer: ReturnType<typeof setTimeout> | undefined;
  private watchTimer: ReturnType<typeof setInterval> | undefined;
  private restTimer: ReturnType<typeof setTimeout> | undefined;
  private resting = false;
  private lastBeatAtMs: number | undefined;
  private status: LiveStatus = {
    connection: 'connecting',
    lastHeardMs: undefined,
    position: undefined,
    asOf: undefined,
    behindMs: 0,
  };
  private readonly statusListeners = new Set<() => void>();
  private readonly listeners = new Map<LiveEventName, Set<Listener<never>>>();

  readonly subscribeStatus = (changed: () => void): (() => void) => {
    this.statusListeners.add(changed);
    return () => this.statusListeners.delete(changed);
  };

  readonly currentStatus = (): LiveStatus => this.status;

  on<N extends LiveEventName>(name: N, listener: Listener<N>): () => void {
    const group = this.listeners.get(name) ?? new Set();
    this.listeners.set(name, group.add(listener as Listener<never>));
    return () => group.delete(listener as Listener<never>);
  }

  /** Starts listening; the returned function ends it. */
  start(): () => void {
    const back = () => this.open();
    const gone = () => this.tell({ connection: 'offline' });
    const seen = () => (document.visibilityState === 'hidden' ? this.restSoon() : this.wake());
    addEventListener('online', back);
    addEventListener('offline', gone);
    addEventListener('visibilitychange', seen);
    this.watchTimer = setInterval(() => this.watch(), 5_000);
    this.open();
    return () => {
      removeEventListener('online', back);
      removeEventListener('offline', gone);
      removeEventListener('visibilitychange', seen);
      clearTimeout(this.restTimer);
      clearInterval(this.watchTimer);
      clearTimeout(this.reopenTimer);
      this.source?.close();
      this.resting = false;
      this.tell({ connection: 'connecting' });
    };
  }

  /** Board events shall cover `window`, beginning after `position` (that of the board just loaded). */
  showBoard(window: BoardWindow, position: Position): void {
    const same = queryString({ ...window }) === queryString({ ...this.window });
    if (same && (this.heardUpTo ?? position) <= position && this.status.connection === 'live') return;
    this.window = window;
    this.heardUpTo = position;
    this.open();
  }

  /** A tab that nobody looks at gives its connection back, or the sixth tab of a browser would never load. */
  private restSoon(): void {
    clearTimeout(this.restTimer);
    this.restTimer = setTimeout(() => {
      this.resting = true;
      clearTimeout(this.reopenTimer);
      this.source?.close();
      this.tell({ connection: 'connecting' });
    }, REST_AFTER_MS);
  }

  private wake(): void {
    clearTimeout(this.restTimer);
    if (!this.resting) return;
    this.resting = false;
    this.open();
  }

  private open(): void {
    clearTimeout(this.reopenTimer);
    this.source?.close();
    if (this.resting) return;
    if (!navigator.onLine) {
      this.tell({ connection: 'offline' });
      return;
    }
    const source = new EventSource(`/api/live${queryString({ ...this.window, after: this.heardUpTo })}`);
    this.source = source;
    for (const name of EVENT_NAMES)
      source.addEventListener(name, (event) => this.hear(name, event as MessageEvent<string>));
    source.onerror = () => {
      // Refused, where a broken line would leave it CONNECTING. The status is not said, so somebody must ask.
      if (source.readyState === CLOSED) tellUnauthorised();
      // The browser would retry by itself, but from the last event of any name; we know better what we have seen.
      source.close();
      this.tell({ connection: navigator.onLine ? 'connecting' : 'offline' });
      clearTimeout(this.reopenTimer);
      this.reopenTimer = setTimeout(() => this.open(), REOPEN_AFTER_MS);
    };
  }

  private hear(name: LiveEventName, message: MessageEvent<string>): void {
    const event = JSON.parse(message.data) as LiveEvents[LiveEventName];
    if ('position' in event && (name !== 'hello' || this.heardUpTo === undefined)) this.heardUpTo = event.position;
    this.tell({
      connection: 'live',
      lastHeardMs: Date.now(),
      ...('position' in event ? { position: event.position } : {}),
      ...('asOf' in event ? { asOf: event.asOf, behindMs: this.behindMs(event) } : {}),
    });
    for (const listener of this.listeners.get(name) ?? []) (listener as (e: typeof event) => void)(event);
  }

  /** Only a beat tells the server's time; other figures are measured by the last one. */
  private behindMs({ asOf, at }: { readonly asOf: Instant; readonly at?: Instant }): number {
    if (at !== undefined) this.lastBeatAtMs = Date.parse(at);
    return Math.max(0, (this.lastBeatAtMs ?? 0) - Date.parse(asOf));
  }

  /** A connection can die without an error (a phone asleep, a lost cable); silence is the sign. */
  private watch(): void {
    const { lastHeardMs, connection } = this.status;
    if (connection !== 'live' || lastHeardMs === undefined || Date.now() - lastHeardMs < STALE_AFTER_MS) return;
    this.tell({ connection: 'stale' });
    this.open();
  }

  private tell(change: Partial<LiveStatus>): void {
    this.status = { ...this.status, ...change };
    for (const changed of this.statusListeners) changed();
  }
}

export const liveStream = new LiveStream();

export function useLiveStatus(): LiveStatus {
  return useSyncExternalStore(liveStream.subscribeStatus, liveStream.currentStatus);
}

/** Calls `listener` for each event of that name while the component is on the screen. */
export function useLiveEvent<N extends LiveEventName>(name: N, listener: Listener<N>): void {
  const latest = useEffectEvent(listener);
  useEffect(() => liveStream.on(name, (event) => latest(event)), [name]);
}
