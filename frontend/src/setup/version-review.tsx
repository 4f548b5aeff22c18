import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../shared/button';
import { useMessages } from '../shared/messages';
import type { ProfileVersion } from '../shared/learning-types';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { adoptProfile } from './profiles-api';
import { profilesMessages } from './profiles-messages';
import { actionsOn, comparedWith, type VersionAction } from './profiles-state';
import { VersionComparison } from './version-comparison';
import { VersionEvidence } from './version-evidence';
import { VersionWeighed } from './version-weighed';

interface VersionReviewProps {
  readonly crop: string;
  readonly looked: ProfileVersion;
  readonly versions: readonly ProfileVersion[];
}

/** One version beside the one it would replace, what it rests on, and what can be done with it. */
export function VersionReview({ crop, looked, versions }: VersionReviewProps) {
  const t = useMessages(profilesMessages);
  const queries = useQueryClient();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const before = comparedWith(versions, looked);
  const actions = actionsOn(looked, versions);
  const pinned = versions.find((each) => each.pinned);

  const act = async (action: VersionAction) => {
    setBusy(true);
    setFailure(undefined);
    const pin = action === 'pin' || action === 'adoptPinned';
    try {
      await adoptProfile(crop, looked.version, pin);
      await queries.invalidateQueries({ queryKey: groups.setup() });
      notice({ text: pin ? t.donePinned(looked.version) : t.done(looked.version) });
    } catch (refused) {
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  return (
    <section aria-label={t.review(looked.version)}>
      <h2>
        {t.review(looked.version)}{' '}
        <small className="rc-quiet">{before ? t.against(before.version) : t.againstNone}</small>
      </h2>
      <div className="rc-row rc-no-print">
        {actions.map((action, i) => (
          <Button
            key={action}
            disabled={busy}
            {...(i === 0 && action !== 'unpin' && action !== 'pin' ? { theme: 'primary' } : {})}
            onClick={() => void act(action)}
          >
            {t[action]}
          </Button>
        ))}
        <span className="rc-quiet">
          {actions.length === 0 && pinned
            ? t.pinnedElsewhere(pinned.version)
            : looked.inForce
              ? t.pinHelp
              : `${t.adoptHelp} ${t.pinHelp}`}
        </span>
      </div>
      <ProblemNote failure={failure} />
      {!looked.inForce && (
        <VersionWeighed crop={crop} version={looked.version} againstLearned={before?.origin === 'learned'} />
      )}
      <VersionComparison before={before?.profile} looked={looked} />
      <VersionEvidence looked={looked} />
    </section>
  );
}
