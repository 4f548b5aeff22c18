import { useEffect, useSyncExternalStore } from 'react';
import { useLocation } from 'react-router';
import { Button } from './button';
import { useMessages } from './messages';
import { arrivedAt, dismiss, hold, noticesNow, onNotices, release } from './notice-list';
import { sharedMessages } from './shared-messages';
import './notices.css';

export { notice } from './notice-list';

/** Under the header, where neither a button to record nor a thumb is. */
export function Notices() {
  const t = useMessages(sharedMessages);
  const all = useSyncExternalStore(onNotices, noticesNow);
  const { pathname } = useLocation();
  useEffect(() => arrivedAt(pathname), [pathname]);
  return (
    <div className="notices rc-no-print" role="status" aria-live="polite">
      {all.map(({ id, text, undo }) => (
        <div
          key={id}
          className="notice"
          onPointerEnter={() => hold(id)}
          onPointerLeave={() => release(id)}
          onFocus={() => hold(id)}
          onBlur={() => release(id)}
        >
          <span className="notice-text">{text}</span>
          {undo && (
            <Button
              onClick={() => {
                dismiss(id);
                void undo();
              }}
            >
              {t.undo}
            </Button>
          )}
          <Button theme="tertiary" aria-label={t.dismiss} onClick={() => dismiss(id)}>
            ✕
          </Button>
        </div>
      ))}
    </div>
  );
}
