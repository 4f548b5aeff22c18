import { useQueryClient } from '@tanstack/react-query';
import { Dialog } from '@vaadin/react-components/Dialog.js';
import { useState } from 'react';
import { Button } from '../shared/button';
import type { TreatmentView } from '../shared/climate-types';
import { useMessages } from '../shared/messages';
import { notice } from '../shared/notices';
import { groups } from '../shared/query-keys';
import { ProblemNote } from '../shared/screen-states';
import { useSites } from '../shared/setup-lists';
import { TextInput } from '../shared/text-input';
import { reverseTreatment } from './treatments-api';
import { treatmentsMessages } from './treatments-messages';

/** Takes a treatment back that was recorded and not applied; the reason stays with it. */
export function ReverseDialog({ treatment, close }: { treatment: TreatmentView; close: () => void }) {
  const zone = useSites().data?.find(({ code }) => code === treatment.site)?.timeZone;
  const t = useMessages(treatmentsMessages);
  const queries = useQueryClient();
  const [reason, setReason] = useState('');
  const [tried, setTried] = useState(false);
  const [failure, setFailure] = useState<unknown>();
  const reverse = async () => {
    setTried(true);
    if (reason.trim() === '') return;
    try {
      await reverseTreatment(treatment.id, reason.trim());
      notice({ text: t.reversedDone });
      await queries.invalidateQueries({ queryKey: groups.treatments() });
      close();
    } catch (refused) {
      setFailure(refused);
    }
  };
  return (
    <Dialog opened headerTitle={t.reverse} onOpenedChanged={(event) => !event.detail.value && close()}>
      <div className="treatment-form">
        <p className="wide">
          {treatment.product}, {treatment.rate}
        </p>
        <p className="rc-warning wide">▲ {t.reversedCaution}</p>
        <TextInput
          className="wide"
          label={t.why}
          value={reason}
          maxlength={500}
          fault={tried && reason.trim() === '' ? t.needed : undefined}
          onValue={setReason}
        />
        <ProblemNote failure={failure} timeZone={zone} />
        <Button className="wide" theme="primary" onClick={() => void reverse()}>
          {t.reverseNow}
        </Button>
      </div>
    </Dialog>
  );
}
