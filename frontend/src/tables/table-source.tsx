import { TextArea } from '@vaadin/react-components/TextArea.js';
import { useRef, useState } from 'react';
import { Button } from '../shared/button';
import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { ArrivedHeading } from './arrived-heading';
import { tablesMessages } from './tables-messages';
import './tables.css';
import { decoded, headerOf, rowsOf } from './table-text-state';

export interface ChosenTable {
  readonly name: string;
  readonly text: string;
}

/** Where the table comes from: a file, or what was copied from a spreadsheet. It stays in the browser for now. */
export function TableSource({ help, choose }: { help: string; choose: (table: ChosenTable) => void }) {
  const t = useMessages(tablesMessages);
  const input = useRef<HTMLInputElement>(null);
  const [failed, setFailed] = useState(false);
  const read = async (file: File) => {
    try {
      choose({ name: file.name, text: decoded(new Uint8Array(await file.arrayBuffer())) });
    } catch {
      // Gone, or not to be read by this browser.
      setFailed(true);
    }
  };
  return (
    <section className="rc-sheet table-part" aria-labelledby="table-source">
      <h2 id="table-source">{t.tableTitle}</h2>
      <p className="rc-quiet">{help}</p>
      <input
        ref={input}
        type="file"
        className="rc-hidden"
        tabIndex={-1}
        aria-label={t.file}
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) void read(file);
        }}
      />
      <div>
        <Button theme="primary" onClick={() => input.current?.click()}>
          {t.file}
        </Button>
      </div>
      {failed && (
        <div className="rc-problem" role="alert">
          <p>✕ {t.unreadable}</p>
        </div>
      )}
      <TextArea
        className="table-paste"
        label={t.paste}
        onValueChanged={({ detail }) => {
          // One line is somebody still typing.
          if (detail.value.trim().includes('\n')) choose({ name: t.pasted, text: detail.value });
        }}
      />
    </section>
  );
}

interface TableGlanceProps {
  readonly table: ChosenTable;
  readonly separator: string;
  readonly fault: string | undefined;
  readonly another: () => void;
}

/** The first lines as the chosen separator cuts them, so that a wrong one is seen at once. */
export function TableGlance({ table, separator, fault, another }: TableGlanceProps) {
  const t = useMessages(tablesMessages);
  const format = useFormats();
  const [header = [], ...rows] = rowsOf(table.text, separator, 5);
  return (
    <section className="rc-sheet table-part" aria-labelledby="table-source">
      <div className="rc-row rc-spread">
        <ArrivedHeading id="table-source">{t.tableTitle}</ArrivedHeading>
        <Button theme="tertiary" onClick={another}>
          {t.another}
        </Button>
      </div>
      <p>{t.tableOf(table.name, format.integer(headerOf([header]).length))}</p>
      {fault !== undefined && (
        <div className="rc-problem" role="alert">
          <p>✕ {fault}</p>
        </div>
      )}
      <div className="table-scroll" tabIndex={0} role="region" aria-label={t.firstLines}>
        <table className="rc-table table-glance">
          <thead>
            <tr>
              {header.map((name, i) => (
                <th key={i} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <tr key={i}>
                {row.map((cell, j) => (
                  <td key={j}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
