import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { Link } from 'react-router';
import { SeedSources } from '../setup/crop-start';
import type { Crop, SeededCrop } from '../shared/api-types';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { newKey } from '../shared/http';
import { useMessages } from '../shared/messages';
import { Problem } from '../shared/problem';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { takeSeededCrops } from './first-day-api';
import { firstDayMessages } from './first-day-messages';
import { Step } from './step';

interface CropsStepProps {
  readonly crops: readonly Crop[];
  readonly seeds: readonly SeededCrop[];
}

/** The crops that come with Rootcast, several taken in one go; a crop's own figures stay folded away. */
export function CropsStep({ crops, seeds }: CropsStepProps) {
  const t = useMessages(firstDayMessages);
  const format = useFormats();
  const queries = useQueryClient();
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set());
  const [failure, setFailure] = useState<unknown>();
  const [busy, setBusy] = useState(false);
  const sent = useRef<{ readonly for: string; readonly key: string }>(undefined);
  const wanted = seeds.map(({ code }) => code).filter((code) => picked.has(code));

  const take = async () => {
    if (wanted.length === 0) return;
    const asked = wanted.join(' ');
    if (sent.current?.for !== asked) sent.current = { for: asked, key: newKey() };
    setBusy(true);
    setFailure(undefined);
    try {
      await takeSeededCrops(wanted, sent.current.key);
      await queries.invalidateQueries({ queryKey: groups.setup() });
      setPicked(new Set());
    } catch (refused) {
      if (refused instanceof Problem) sent.current = undefined;
      setFailure(refused);
    } finally {
      setBusy(false);
    }
  };
  return (
    <Step id="first-crops" title={t.cropsTitle} done={crops.length > 0}>
      <p className="rc-quiet">{t.cropsHelp}</p>
      <ul className="first-crops">
        {seeds.map((seed) => {
          const { stages } = seed.profile;
          const days = stages.reduce((sum, { daysAtReference }) => sum + daysAtReference, 0);
          const survive = stages.reduce((share, { survivalMean }) => share * survivalMean, 1);
          return (
            <li key={seed.code}>
              <label>
                <input
                  type="checkbox"
                  checked={seed.taken || picked.has(seed.code)}
                  disabled={seed.taken}
                  onChange={({ target }) =>
                    setPicked((before) =>
                      target.checked
                        ? new Set([...before, seed.code])
                        : new Set([...before].filter((code) => code !== seed.code)),
                    )
                  }
                />
                <span>
                  {seed.name}
                  {seed.taken && <span className="rc-quiet"> · {t.taken}</span>}
                </span>
              </label>
              <small className="rc-quiet">
                {t.days(format.integer(days))} · {t.survive(format.percent(survive))}
              </small>
              <SeedSources seed={seed} />
            </li>
          );
        })}
      </ul>
      <ProblemNote failure={failure} />
      <div className="rc-row">
        <Button theme="primary" disabled={busy || wanted.length === 0} onClick={() => void take()}>
          {wanted.length === 0 ? t.takeNone : t.take(format.integer(wanted.length))}
        </Button>
        <Link className="rc-link" to="/setup/crops/~new">
          {t.ownCrop}
        </Link>
      </div>
    </Step>
  );
}
