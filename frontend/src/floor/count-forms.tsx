import { useState } from 'react';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { AmountPad } from './amount-pad';
import { floorMessages } from './floor-messages';
import { aliveBySample, places, sampleFault, wholeTyped } from './floor-state';
import { Choice, Form, signed, useFormatOf, type EntryFormProps } from './form-parts';

/** Living plants, all of them or a sample of the trays. */
export function CountForm({ batch, before, record, busy }: Omit<EntryFormProps, 'earlier'>) {
  const t = useMessages(floorMessages);
  const [whole, setWhole] = useState(!(before?.kind === 'count' && 'blanks' in before));
  return (
    <>
      <div className="two" role="group" aria-label={t.count}>
        <Choice chosen={whole} choose={() => setWhole(true)}>
          {t.countAll}
        </Choice>
        <Choice chosen={!whole} choose={() => setWhole(false)}>
          {t.countSample}
        </Choice>
      </div>
      {whole ? (
        <FullCount batch={batch} before={before} record={record} busy={busy} />
      ) : (
        <SampledCount batch={batch} before={before} record={record} busy={busy} />
      )}
    </>
  );
}

function FullCount({ batch, before, record, busy }: Omit<EntryFormProps, 'earlier'>) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const cells = useFormatOf(batch)?.cells;
  const [typed, setTyped] = useState(before?.kind === 'count' && 'plants' in before ? String(before.plants) : '');
  const [tried, setTried] = useState(false);
  const plants = wholeTyped(typed);
  const most = cells === undefined ? undefined : places(batch, cells);
  const difference = plants === undefined ? undefined : plants - batch.plants.alive;
  return (
    <Form
      busy={busy}
      submit={() => (plants === undefined ? setTried(true) : record({ kind: 'count', plants }))}
      warning={
        plants !== undefined && most !== undefined && plants > most ? t.moreThanStuck(format.integer(most)) : undefined
      }
    >
      <AmountPad
        chosen="plants"
        choose={() => undefined}
        onValue={(_, value) => setTyped(value)}
        fields={[
          {
            name: 'plants',
            label: t.plantsAlive,
            value: typed,
            start: batch.plants.alive,
            placeholder: '–',
            hint:
              difference === undefined
                ? t.booksSay(format.integer(batch.plants.alive))
                : difference === 0
                  ? t.sameAsBooks
                  : t.difference(signed(difference, format.integer)),
            fault: tried && plants === undefined ? t.typeAmount : undefined,
          },
        ]}
      />
    </Form>
  );
}

function SampledCount({ batch, before, record, busy }: Omit<EntryFormProps, 'earlier'>) {
  const t = useMessages(floorMessages);
  const format = useFormats();
  const cellsPerTray = useFormatOf(batch)?.cells;
  const old = before?.kind === 'count' && 'blanks' in before ? before : undefined;
  const [typed, setTyped] = useState({
    trays: old ? String(old.sampledTrays) : '',
    cells: old ? String(old.sampledCells) : '',
    blanks: old ? String(old.blanks) : '',
  });
  const [chosen, setChosen] = useState('trays');
  const [tried, setTried] = useState(false);

  const trays = wholeTyped(typed.trays);
  const allCells = trays === undefined || cellsPerTray === undefined ? undefined : trays * cellsPerTray;
  const cells = typed.cells === '' ? allCells : wholeTyped(typed.cells);
  const blanks = wholeTyped(typed.blanks);
  const sample =
    trays === undefined || cells === undefined || blanks === undefined ? undefined : { trays, cells, blanks };
  // Each field is judged as soon as it is typed, without waiting for the last one.
  const fault =
    trays !== undefined && cellsPerTray !== undefined
      ? sampleFault({ trays, cells: cells ?? 1, blanks: blanks ?? 0 }, batch, cellsPerTray)
      : undefined;
  const beside = (field: string) => (fault?.endsWith(field) ? t[fault] : undefined);
  const missing = (value: number | undefined) => (tried && value === undefined ? t.typeAmount : undefined);
  const inPlaces = cellsPerTray === undefined ? undefined : places(batch, cellsPerTray);

  return (
    <Form
      busy={busy}
      submit={() => {
        if (!sample || fault) setTried(true);
        else record({ kind: 'count', sampledTrays: sample.trays, sampledCells: sample.cells, blanks: sample.blanks });
      }}
    >
      <AmountPad
        chosen={chosen}
        choose={setChosen}
        onValue={(name, value) => setTyped((all) => ({ ...all, [name]: value }))}
        fields={[
          {
            name: 'trays',
            label: t.sampleTrays,
            value: typed.trays,
            placeholder: '–',
            fault: beside('trays') ?? missing(trays),
          },
          {
            name: 'cells',
            label: t.sampleCells,
            value: typed.cells,
            start: allCells ?? 0,
            placeholder: allCells === undefined ? '–' : String(allCells),
            hint: trays !== undefined && cellsPerTray !== undefined ? `${trays} × ${cellsPerTray}` : undefined,
            fault: beside('cells') ?? missing(cells),
          },
          {
            name: 'blanks',
            label: t.sampleBlanks,
            value: typed.blanks,
            placeholder: '–',
            fault: beside('blanks') ?? missing(blanks),
          },
        ]}
      />
      <p className="would-be" role="status">
        {sample && !fault && inPlaces !== undefined && (
          <>
            <strong>{t.wouldBe(format.integer(aliveBySample(sample, inPlaces)))}</strong>{' '}
            {t.ofPlaces(format.integer(inPlaces))}, {t.booksSay(format.integer(batch.plants.alive))}
          </>
        )}
      </p>
    </Form>
  );
}
