import { useMemo } from 'react';
import { useQuantityWords } from '../climate/climate-words';
import type { WarningView } from '../shared/climate-types';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { Plot } from '../shared/plot';
import { Loading, ProblemNote } from '../shared/screen-states';
import { useEvidence } from './warnings-api';
import { warningsMessages } from './warnings-messages';
import { spokenAs } from './warnings-state';

interface WarningEvidenceProps {
  readonly warning: WarningView;
  readonly houseName: string;
  readonly timeZone: string | undefined;
}

/** The very hours that the warning was made of, over its limit; or when the check was last recorded. */
export function WarningEvidence({ warning, houseName, timeZone }: WarningEvidenceProps) {
  const t = useMessages(warningsMessages);
  const format = useFormats();
  const words = useQuantityWords();
  const evidence = useEvidence(warning.id);
  const hours = evidence.data?.hours;
  const quantity = spokenAs(warning.unit);
  const { kind, since } = warning;
  const plot = useMemo(() => {
    if (!hours || hours.length === 0) return undefined;
    const shown = (value: number) => (quantity ? words.shown(quantity, value) : value);
    const digits = quantity ? words.digits(quantity) : 1;
    return (
      <Plot
        label={t.plot(t[kind], houseName)}
        at={hours.map(({ at }) => at)}
        series={[
          { label: t.seenLine, values: hours.map(({ value }) => shown(value)), tone: 'ink', dots: true, digits },
          { label: t.limitLine, values: hours.map(({ limit }) => shown(limit)), tone: 'amber', dashed: true, digits },
        ]}
        marks={[{ at: since, label: t.begin }]}
        yLabel={quantity ? words.unit(quantity) : (warning.unit ?? '')}
        {...(quantity === 'medium-moisture' ? { yRange: [0.5, 5.5] as const } : {})}
        {...(timeZone === undefined ? {} : { timeZone })}
        heightPx={170}
      />
    );
  }, [t, words, hours, quantity, kind, since, houseName, timeZone, warning.unit]);
  const lastDone = evidence.data?.lastDone;
  return (
    <section aria-label={t.evidence}>
      <h3>{t.evidence}</h3>
      {evidence.isPending && <Loading />}
      <ProblemNote failure={evidence.error ?? undefined} />
      {plot}
      {evidence.data && !plot && <p>{t.noEvidence}</p>}
      {evidence.data && warning.settledBy.length > 0 && (
        <p>{lastDone ? t.lastDone(format.dateTime(lastDone, timeZone)) : t.neverDone}</p>
      )}
    </section>
  );
}
