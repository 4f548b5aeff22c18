import { useEffect, useState, type RefObject } from 'react';

/** True once the element has come near the screen; a long list then asks only for what is looked at. */
export function useOnceInSight(element: RefObject<Element | null>): boolean {
  const [seen, setSeen] = useState(false);
  useEffect(() => {
    if (seen || !element.current) return;
    const watcher = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true);
      },
      { rootMargin: '200px' },
    );
    watcher.observe(element.current);
    return () => watcher.disconnect();
  }, [element, seen]);
  return seen;
}
