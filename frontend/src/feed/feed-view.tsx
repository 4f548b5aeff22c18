import { useState } from 'react';
import { Link, useSearchParams } from 'react-router';
import { useMessages } from '../shared/messages';
import { useScreenTitle } from '../shared/screen-title';
import { FeedForm } from './feed-form';
import { feedMessages } from './feed-messages';
import { rememberedFeed } from './feed-memory';
import { calculationIn, CALCULATIONS, type FeedDraft } from './feed-state';
import './feed.css';

/** Arithmetic of the feed tank, and of a rate that is typed from a label. Nothing is stored. */
export function FeedView() {
  const t = useMessages(feedMessages);
  useScreenTitle(t.title);
  const [params] = useSearchParams();
  const calculation = calculationIn(params);
  // What one question knows another often asks again: the tank, the fertilizer, the injector.
  const [draft, setDraft] = useState<FeedDraft>(rememberedFeed);
  const pathOf = (of: string) => {
    const after = new URLSearchParams(params);
    after.set('of', of);
    return `/feed?${after}`;
  };
  return (
    <div className="rc-screen feed">
      <nav aria-label={t.which} className="feed-questions rc-no-print">
        {CALCULATIONS.map((each) => (
          <Link key={each} to={pathOf(each)} aria-current={each === calculation ? 'page' : undefined}>
            {t[each]}
          </Link>
        ))}
      </nav>
      <FeedForm key={calculation} calculation={calculation} draft={draft} change={setDraft} />
    </div>
  );
}
