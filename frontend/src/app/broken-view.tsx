import { Link, useRouteError } from 'react-router';
import { Button } from '../shared/button';
import { useMessages } from '../shared/messages';
import { useScreenTitle } from '../shared/screen-title';
import { appMessages } from './app-messages';
import { ScreenNotFetched } from './screen';

export function NotFoundView() {
  const t = useMessages(appMessages);
  useScreenTitle(t.notFound);
  return (
    <div className="rc-state">
      <p>{t.notFoundHelp}</p>
      <Link className="rc-link" to="/board">
        {t.toBoard}
      </Link>
    </div>
  );
}

export function BrokenView() {
  const t = useMessages(appMessages);
  const failure = useRouteError();
  const unreached = failure instanceof ScreenNotFetched;
  useScreenTitle(unreached ? t.offline : t.broken);
  if (unreached) {
    return (
      <div className="rc-state" role="alert">
        <p>{t.screenNotHere}</p>
        <Button onClick={() => location.reload()}>{t.reload}</Button>
      </div>
    );
  }
  return (
    <div className="rc-state" role="alert">
      <p>{t.brokenHelp}</p>
      <p>
        <code>{failure instanceof Error ? failure.message : String(failure)}</code>
      </p>
      <Button onClick={() => location.reload()}>{t.reload}</Button>
    </div>
  );
}
