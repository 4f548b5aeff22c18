import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../people/signed-in';
import { Button } from '../shared/button';
import type { WarningView } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { TextInput } from '../shared/text-input';
import { acknowledge } from './warnings-api';
import { warningsMessages } from './warnings-messages';

/** That somebody has seen it, and what is being done; for whom may say so. */
export function AcknowledgeWarning({ warning, what }: { warning: WarningView; what: string }) {
  const t = useMessages(warningsMessages);
  const queries = useQueryClient();
  const mayRecord = useMay('record', warning.site);
  const [text, setText] = useState('');
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  if (!mayRecord) return null;
  const see = async () => {
    setBusy(true);
    setFailure(undefined);
    try {
      await acknowledge(warning.id, text.trim());
      notice({ text: `${t.done}. ${t.goesOn}` });
      await queries.invalidateQueries({ queryKey: groups.warnings() });
    } catch (refused) {
      setFailure(refused);
      setBusy(false);
    }
  };
  return (
    <div className="warning-see rc-no-print">
      <TextInput label={t.whatDone} value={text} maxlength={2000} onValue={setText} />
      <Button disabled={busy} aria-label={`${t.acknowledge}: ${what}`} onClick={() => void see()}>
        {t.acknowledge}
      </Button>
      <ProblemNote failure={failure} />
    </div>
  );
}
