import { useEffect } from 'react';
import { Link, Navigate, useNavigate, useSearchParams } from 'react-router';
import { useAbout } from '../shared/about';
import { useMessages } from '../shared/messages';
import { prefer, usePreferences } from '../shared/preferences';
import { Failed, Loading } from '../shared/screen-states';
import { Doors } from './doors';
import { FirstStartForm } from './first-start-form';
import { useSession } from './session-api';
import { keepNext } from './session-memory';
import { SignInForm } from './sign-in-form';
import { signInMessages } from './sign-in-messages';
import { isHandOver, nextIn } from './sign-in-state';
import { WaitingNote } from './waiting-note';
import './sign-in.css';

/** The way in: the first start, the demo's doors, or name and password. `next` in the address is where one came from. */
export function SignInView() {
  const t = useMessages(signInMessages);
  const [params] = useSearchParams();
  const navigate = useNavigate();
  const about = useAbout();
  const session = useSession();
  const next = nextIn(params) ?? '/';
  const withName = params.get('with') === 'name';
  const kind = about.data?.needsOwner ? 'owner' : about.data?.demo && !withName ? 'doors' : 'form';
  const title = { owner: t.ownerTitle, doors: t.demoTitle, form: t.title }[kind];
  useEffect(() => {
    document.title = `${title} · Rootcast`;
  }, [title]);

  const done = () => void navigate(next, { replace: true });
  if (session.data) return <Navigate to={next} replace />;
  const swapped = new URLSearchParams(params);
  if (withName) swapped.delete('with');
  else swapped.set('with', 'name');
  return (
    <div className={`entry entry-of-${kind}`}>
      <header className="entry-top">
        <p className="entry-brand">
          <img src="/icon.svg" alt="" width="36" height="36" />
          <span>
            <strong>Rootcast</strong>
            <small>{t.product}</small>
          </span>
        </p>
        <LanguageChoice />
      </header>
      <main className="entry-main">
        {about.isPending ? (
          <Loading />
        ) : !about.data ? (
          <Failed failure={about.error} retry={() => void about.refetch()} />
        ) : (
          <section className="entry-sheet" aria-labelledby="entry-title">
            <h1 id="entry-title">{title}</h1>
            <WaitingNote handedOver={isHandOver(params)} />
            {kind === 'owner' && <FirstStartForm done={done} />}
            {kind === 'doors' && (
              <>
                <p className="entry-help">{t.demoHelp}</p>
                <Doors done={done} />
              </>
            )}
            {kind === 'form' && (
              <>
                <SignInForm done={done} />
                {about.data.oidc && <CompanyAccount next={next} />}
                <p className="entry-hint">{t.lostPassword}</p>
              </>
            )}
            {about.data.demo && kind !== 'owner' && (
              <Link className="entry-link" to={`?${swapped}`}>
                {withName ? t.toDoors : t.withName}
              </Link>
            )}
          </section>
        )}
      </main>
    </div>
  );
}

/** Leaves for the directory of the business. The server brings one back to the start, which goes on to `next`. */
export function CompanyAccount({ next }: { next: string }) {
  const t = useMessages(signInMessages);
  return (
    <>
      <p className="entry-or" aria-hidden="true">
        {t.or}
      </p>
      <a className="entry-button" href="/api/session/directory" onClick={() => keepNext(next)}>
        {t.oidc}
      </a>
    </>
  );
}

/** Before anybody is signed in there is no other place to choose it. */
function LanguageChoice() {
  const t = useMessages(signInMessages);
  const { language } = usePreferences();
  return (
    <div className="entry-languages" role="group" aria-label={t.language}>
      {(
        [
          ['en', 'English'],
          ['es', 'Español'],
        ] as const
      ).map(([each, name]) => (
        <button
          key={each}
          type="button"
          lang={each}
          aria-pressed={language === each}
          onClick={() => prefer({ language: each })}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
