import { useAbout } from '../shared/about';
import { useFormats } from '../shared/formats';
import { STALE_AFTER_MS, useLiveStatus } from '../shared/live-stream';
import { useMessages } from '../shared/messages';
import { useNow } from '../shared/now';
import { appMessages } from './app-messages';

/** How fresh the figures are, always in sight: a word and a shape, not a colour alone. */
export function ConnectionNote() {
  const t = useMessages(appMessages);
  const format = useFormats();
  const nowMs = useNow();
  const { connection, asOf, lastHeardMs } = useLiveStatus();
  const about = useAbout();

  const time = asOf === undefined ? undefined : format.time(asOf);
  const quietMs = lastHeardMs === undefined ? 0 : nowMs - lastHeardMs;
  const fresh = connection === 'live' && quietMs < STALE_AFTER_MS;
  const text = () => {
    if (connection === 'offline') return time === undefined ? t.offline : t.offlineSince(time);
    if (time === undefined) return t.connecting;
    return fresh ? t.live(time) : t.waiting(time, ago(quietMs));
  };
  const ago = (ms: number) => {
    const minutes = Math.floor(ms / 60_000);
    if (minutes < 1) return t.agoSeconds;
    return minutes < 120 ? t.agoMinutes(minutes) : t.agoHours(Math.floor(minutes / 60));
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
