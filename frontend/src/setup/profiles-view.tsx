import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { HeadRow } from '../shared/head-row';
import type { ProfileVersion } from '../shared/learning-types';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { Empty, Failed, Loading, ProblemNote } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops } from '../shared/setup-lists';
import { proposeLearning, useProfileVersions } from './profiles-api';
import { profilesMessages } from './profiles-messages';
import { lookedAt, stateOf } from './profiles-state';
import { VersionReview } from './version-review';
import './profiles.css';

/** Every version of a crop's profile, what the batches teach, and which version is in force. */
export function ProfilesView() {
  const t = useMessages(profilesMessages);
  const { code = '', version } = useParams();
  const crops = useCrops();
  const crop = crops.data?.find((each) => each.code === code);
  useScreenTitle(t.title(crop?.name ?? code));
  const versions = useProfileVersions(code);
  if (crops.isPending || versions.isPending) return <Loading />;
  if (crops.data && !crop) {
    return (
      <Empty title={t.unknownCrop(code)}>
        <Link className="rc-link" to="/setup/crops">
          {t.toCrops}
        </Link>
      </Empty>
    );
  }
  if (!versions.data) return <Failed failure={versions.error} retry={() => void versions.refetch()} />;
  const looked = lookedAt(versions.data, version);
  return (
    <div className="rc-screen profiles">
      <div className="rc-row rc-spread">
        <span className="rc-row">
          <Link className="rc-link" to={`/setup/crops/${encodeURIComponent(code)}`}>
            {t.toCrop}
          </Link>
          <Link className="rc-link" to="/setup/crops">
            {t.toCrops}
          </Link>
        </span>
        <Propose crop={code} />
      </div>
      <Versions crop={code} versions={versions.data} looked={looked} />
      {looked ? (
        <VersionReview key={looked.version} crop={code} looked={looked} versions={versions.data} />
      ) : (
        <p className="rc-quiet">{t.unknownVersion(version ?? '')}</p>
      )}
    </div>
  );
}

function Propose({ crop }: { crop: string }) {
  const t = useMessages(profilesMessages);
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const propose = async () => {
    setBusy(true);
    setFailure(undefined);
    try {
      const { version } = await proposeLearning(crop);
      await queries.invalidateQueries({ queryKey: groups.profiles(crop) });
      notice({ text: t.proposed(version) });
      void navigate(`/setup/crops/${encodeURIComponent(crop)}/profiles/${version}`);
    } catch (refused) {
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="profiles-propose rc-no-print">
      <span className="rc-row">
        <span className="rc-quiet">{t.proposeHelp}</span>
        <Button theme="primary" disabled={busy} onClick={() => void propose()}>
          {busy ? t.proposing : t.propose}
        </Button>
      </span>
      <ProblemNote failure={failure} />
    </div>
  );
}

interface VersionsProps {
  readonly crop: string;
  readonly versions: readonly ProfileVersion[];
  readonly looked: ProfileVersion | undefined;
}

function Versions({ crop, versions, looked }: VersionsProps) {
  const t = useMessages(profilesMessages);
  const format = useFormats();
  const origin = ({ origin: from, evidence }: ProfileVersion) => {
    if (from === 'entered') return t.entered;
    return evidence ? t.learned(format.integer(evidence.finishedBatches + evidence.runningBatches)) : t.learnedBare;
  };
  return (
    <section aria-label={t.versions}>
      <h2>{t.versions}</h2>
      <div className="profiles-scroll rc-sheet">
        <table className="rc-table">
          <HeadRow heads={[t.version, t.state, t.from, t.made, t.adopted]} />
          <tbody>
            {versions.map((each) => (
              <tr key={each.version} aria-current={each === looked ? 'true' : undefined}>
                <th scope="row">
                  <Link
                    className="rc-link"
                    to={`/setup/crops/${encodeURIComponent(crop)}/profiles/${each.version}`}
                    aria-current={each === looked ? 'page' : undefined}
                  >
                    {t.review(each.version)}
                  </Link>
                </th>
                <td>{each.inForce ? <strong>✓ {t[`state${stateOf(each)}`]}</strong> : t[`state${stateOf(each)}`]}</td>
                <td>{origin(each)}</td>
                <td>{format.dateTime(each.createdAt)}</td>
                <td>{each.adoptedAt === null ? '–' : format.dateTime(each.adoptedAt)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
