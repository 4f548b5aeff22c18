import { useAbout } from '../shared/about';
import { useFormats } from '../shared/formats';
import { BEHIND_AFTER_MS, STALE_AFTER_MS, useLiveStatus } from '../shared/live-stream';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { appMessages } from './app-messages';

/** How fresh the figures are, always in sight: a word and a shape, not a colour alone. */
export function ConnectionNote() {
  const t = useMessages(appMessages);
  const format = useFormats();
  const nowMs = useNow();
  const { connection, asOf, behindMs, lastHeardMs } = useLiveStatus();
  const about = useAbout();

  const time = asOf === undefined ? undefined : format.time(asOf);
  const quietMs = lastHeardMs === undefined ? 0 : nowMs - lastHeardMs;
  const heard = connection === 'live' && quietMs < STALE_AFTER_MS;
  const behind = heard && behindMs > BEHIND_AFTER_MS;
  const fresh = heard && !behind;
  const text = () => {
    if (connection === 'offline') return time === undefined ? t.offline : t.offlineSince(time);
    if (time === undefined) return t.connecting;
    if (behind) return t.catchingUp(time, minutes(behindMs));
    return fresh ? t.live(time) : t.waiting(time, ago(quietMs));
  };
  const minutes = (ms: number) => Math.floor(ms / 60_000);
  const ago = (ms: number) => {
    const n = minutes(ms);
    if (n < 1) return t.agoSeconds;
    return n < 120 ? t.agoMinutes(n) : t.agoHours(Math.floor(n / 60));
  };
  const kind = fresh ? 'fresh' : connection === 'offline' ? 'broken' : 'old';
  return (
    <span className={`connection ${kind}`}>
      {about.data?.demo && (
        <span className="demo" title={t.demoHelp}>
          {t.demo}
        </span>
      )}
      <span className="connection-mark" aria-hidden="true">
        {{ fresh: '●', old: '▲', broken: '✕' }[kind]}
      </span>
      <span className="connection-text" role="status" aria-live={fresh ? 'off' : 'polite'}>
        {text()}
      </span>
    </span>
  );
}
