import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import { Navigate, useLocation, useNavigate } from 'react-router';
import { outbox } from '../outbox/outbox';
import { useAbout } from '../shared/about';
import { liveStream } from '../shared/live-stream';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { onUnauthorised } from '../shared/unauthorised';
import { Doors } from './doors';
import { isOfNobody, keys } from '../shared/query-keys';
import type { Session } from './people-types';
import { onOtherTab, useSession } from './session-api';
import { rememberedSession, rememberSession } from './session-memory';
import { gateOf } from './session-state';
import { SignInForm } from './sign-in-form';
import { signInMessages } from './sign-in-messages';
import { signInAddress } from './sign-in-state';
import { SignedInProvider } from './signed-in';
import './sign-in.css';

/**
 * Lets through who is signed in and sends everybody else to the sign-in. When a session ends while somebody works, the
 * screen stays with all that was typed, and a dialog asks for the sign-in over it. Another person gets fresh screens.
 */
export function SessionGate({ children }: { children: ReactNode }) {
  const session = useSession();
  const { pathname, search, hash } = useLocation();
  const [shown, setShown] = useState<Session>();
  const gate = gateOf({
    answer: session.data,
    failed: session.isError,
    shown,
    remembered: rememberedSession(),
  });
  useAskAgain();
  const fresh = useFreshFor(gate.kind === 'open' ? gate.session : undefined);
  useEffect(() => {
    if (gate.kind === 'open' && session.data) setShown(gate.session);
  }, [gate, session.data]);
  useEffect(() => (gate.kind === 'open' ? liveStream.start() : undefined), [gate.kind]);

  switch (gate.kind) {
    case 'asking':
      return <Loading />;
    case 'failed':
      return <Failed failure={session.error} retry={() => void session.refetch()} />;
    case 'shut':
      return <Navigate to={signInAddress(pathname + search + hash)} replace />;
    default:
      if (!fresh) return <Loading />;
      return (
        <SignedInProvider key={gate.session.name} value={gate.session}>
          {gate.kind === 'ended' && <SessionEnded session={gate.session} />}
          {children}
        </SignedInProvider>
      );
  }
}

/** Asks who is signed in whenever there is doubt. */
function useAskAgain(): void {
  const queries = useQueryClient();
  useEffect(() => {
    const ask = () => void queries.invalidateQueries({ queryKey: keys.session() }, { cancelRefetch: false });
    const leave = [onUnauthorised(ask), onOtherTab(ask)];
    return () => leave.forEach((each) => each());
  }, [queries]);
}

/** Whether the cache is of this person: what was fetched for another is dropped before a screen can show it. */
function useFreshFor(session: Session | undefined): boolean {
  const queries = useQueryClient();
  const [whose, setWhose] = useState<string>();
  const name = session?.name;
  useLayoutEffect(() => {
    if (name === undefined) return;
    if (whose !== undefined && whose !== name) {
      queries.removeQueries({ predicate: ({ queryKey }) => !isOfNobody(queryKey) });
    }
    setWhose(name);
  }, [name, whose, queries]);
  useLayoutEffect(() => {
    if (session) rememberSession(session);
  }, [session]);
  return name === undefined || whose === name;
}

function SessionEnded({ session }: { session: Session }) {
  const t = useMessages(signInMessages);
  const queries = useQueryClient();
  const navigate = useNavigate();
  const about = useAbout();
  const dialog = useRef<HTMLDialogElement>(null);
  const [later, setLater] = useState(false);
  const doors = about.data?.demo === true;
  useEffect(() => {
    if (later) return;
    dialog.current?.showModal();
    // The name is there already.
    dialog.current?.querySelector<HTMLElement>('input[type=password], .doors button')?.focus();
  }, [later]);
  const done = () => {
    // Somebody else begins where their own work begins.
    if (queries.getQueryData<Session>(keys.session())?.name !== session.name) void navigate('/');
    // What was refused in between is asked for again, and what waited goes.
    void queries.invalidateQueries();
    void outbox.send();
  };
  if (later) {
    return (
      <div className="ended-bar" role="alert">
        <p>▲ {t.endedBar}</p>
        <button type="button" className="entry-button primary" onClick={() => setLater(false)}>
          {t.signIn}
        </button>
      </div>
    );
  }
  return (
    <dialog
      ref={dialog}
      className={`session-ended ${doors ? 'wide' : ''}`}
      aria-labelledby="session-ended"
      onClose={() => setLater(true)}
    >
      <h2 id="session-ended">{t.endedTitle}</h2>
      <p className="entry-help">{t.endedHelp(session.displayName)}</p>
      {doors ? <Doors done={done} /> : <SignInForm name={session.name} done={done} />}
      <button type="button" className="entry-button entry-later" onClick={() => dialog.current?.close()}>
        {t.later}
      </button>
    </dialog>
  );
}
