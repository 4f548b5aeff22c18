import { useState } from 'react';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { AmountPad } from './amount-pad';
import { entryMessages } from './entry-messages';
import { floorMessages } from './floor-messages';
import { lookFault, places, stagesAhead, wholeTyped } from './floor-state';
import { Choice, Form, useFormatOf, type EntryFormProps } from './form-parts';

/** A stage counts as reached when this share of the living cells has reached it. */
const COMPLETE = 0.9;

/** Of some cells looked at, how many have reached a stage. None of them is an observation too. */
export function LookForm({ batch, before, record, busy }: EntryFormProps) {
  const t = useMessages(floorMessages);
  const words = useMessages(entryMessages);
  const format = useFormats();
  const cellsPerTray = useFormatOf(batch)?.cells;
  const old = before?.kind === 'look' ? before : undefined;
  const ahead = stagesAhead(batch.stage);
  const [stage, setStage] = useState(old && ahead.includes(old.stage) ? old.stage : ahead[0]);
  const [typed, setTyped] = useState({
    cells: old ? String(old.cells) : '',
    reached: old ? String(old.reached) : '',
  });
  const [chosen, setChosen] = useState('cells');
  const [tried, setTried] = useState(false);
  const cells = wholeTyped(typed.cells);
  const reached = wholeTyped(typed.reached);
  const most = cellsPerTray === undefined ? undefined : places(batch, cellsPerTray);
  const fault = lookFault({ cells, reached }, most);
  const beside = (field: string) => (fault?.endsWith(field) ? t[fault] : undefined);
  const missing = (value: number | undefined) => (tried && value === undefined ? t.typeAmount : undefined);
  const put = (name: string, value: string) => setTyped((all) => ({ ...all, [name]: value }));
  return (
    <Form
      busy={busy}
      unready={stage === undefined}
      submit={() => {
        if (stage === undefined || cells === undefined || reached === undefined || fault) setTried(true);
        else record({ kind: 'look', stage, cells, reached });
      }}
    >
      <fieldset className="choices three">
        <legend>{t.lookFor}</legend>
        {ahead.map((each) => (
          <Choice key={each} chosen={stage === each} choose={() => setStage(each)}>
            {words[`reached${each}`]}
          </Choice>
        ))}
      </fieldset>
      <AmountPad
        chosen={chosen}
        choose={setChosen}
        onValue={put}
        fields={[
          {
            name: 'cells',
            label: t.lookCells,
            value: typed.cells,
            start: Math.min(50, most ?? 50),
            placeholder: '–',
            fault: beside('cells') ?? missing(cells),
          },
          {
            name: 'reached',
            label: t.lookReached,
            value: typed.reached,
            placeholder: '–',
            hint:
              cells !== undefined && cells > 0 && reached !== undefined && fault === undefined
                ? format.percent(reached / cells)
                : undefined,
            fault: beside('reached') ?? missing(reached),
          },
        ]}
      />
      <div className="two look-quick" role="group" aria-label={t.lookReached}>
        <Choice chosen={reached === 0} choose={() => put('reached', '0')}>
          {t.lookNone}
        </Choice>
        <Choice
          chosen={cells !== undefined && cells > 0 && reached === cells}
          choose={() => (cells === undefined ? setTried(true) : put('reached', String(cells)))}
        >
          {t.lookAll}
        </Choice>
      </div>
      <p className="would-be" role="status">
        {cells !== undefined && reached !== undefined && fault === undefined && cells > 0 && reached / cells >= COMPLETE
          ? t.lookComplete
          : t.lookHelp}
      </p>
    </Form>
  );
}
