import { useEffect, useState, type ComponentType } from 'react';
import { whenIdle } from './idle';
import { Unreachable } from './problem';
import { Failed } from './screen-states';

/**
 * A part of a screen whose code comes after the screen has been drawn: what opens on a press must not delay what is read at
 * once. It is fetched as soon as the browser has nothing else to do, so that it is there when it is wanted, without a network
 * too. Call it where the module is made, not while drawing.
 */
export function later<P extends object>(fetchCode: () => Promise<ComponentType<P>>): ComponentType<P> {
  let code: ComponentType<P> | undefined;
  const fetched = async () => (code ??= await fetchCode());
  whenIdle(() => void fetched().catch(() => undefined));
  return function Later(props: P) {
    const [, draw] = useState(0);
    const [failure, setFailure] = useState<unknown>();
    const fetchAndDraw = () =>
      void fetched().then(
        () => {
          setFailure(undefined);
          draw((times) => times + 1);
        },
        (failed: unknown) => setFailure(new Unreachable('a part of the screen was not fetched', { cause: failed })),
      );
    useEffect(() => {
      if (!code) fetchAndDraw();
      // Once: what follows is asked for by hand.
    }, []);
    const Part = code;
    if (Part) return <Part {...props} />;
    return failure === undefined ? null : <Failed failure={failure} retry={fetchAndDraw} />;
  };
}
