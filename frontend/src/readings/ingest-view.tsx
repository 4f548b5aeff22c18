import { Link } from 'react-router';
import { climateMessages } from '../climate/climate-messages';
import { ReadingsLinks } from '../climate/readings-links';
import { useFormats } from '../shared/formats';
import { figure, HeadRow, spoken } from '../shared/head-row';
import { useMessages } from '../shared/messages';
import type { Ingest, IngestFault } from '../shared/reading-types';
import { Empty, Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { readingSaid, useSpeaker } from '../shared/use-problem-words';
import { ingestMessages } from './ingest-messages';
import { notStored, sensorFrom } from './ingest-state';
import { useIngest } from './readings-api';
import './readings.css';

/** What came in, by way in, what became of it, and the topics that nobody knows. */
export function IngestView() {
  const t = useMessages(ingestMessages);
  useScreenTitle(t.title);
  const format = useFormats();
  const ingest = useIngest();
  if (ingest.isPending) return <Loading />;
  if (!ingest.data) return <Failed failure={ingest.error} retry={() => void ingest.refetch()} />;
  return (
    <div className="rc-screen readings">
      <ReadingsLinks />
      <p className="rc-quiet">{t.help}</p>
      {ingest.isError && (
        <p className="rc-warning" role="status">
          ▲ {t.stale(format.time(new Date(ingest.dataUpdatedAt).toISOString()))}
        </p>
      )}
      <Broker mqtt={ingest.data.mqtt} />
      {ingest.data.ways.length === 0 ? (
        <Empty title={t.nothing}>
          <p>{t.nothingHelp}</p>
        </Empty>
      ) : (
        <>
          <Ways ingest={ingest.data} />
          <UnknownTopics ingest={ingest.data} />
          <Faults ingest={ingest.data} />
          {ingest.data.refused.count > 0 && <SetApart refused={ingest.data.refused} />}
        </>
      )}
    </div>
  );
}

function Broker({ mqtt }: { mqtt: Ingest['mqtt'] }) {
  const t = useMessages(ingestMessages);
  const format = useFormats();
  if (mqtt.state === 'off') return <p>{t.off}</p>;
  const facts = [
    [t.brokerAt, mqtt.broker],
    [t.waiting, format.integer(mqtt.waiting)],
    [t.since, mqtt.lastConnectedAt && format.dateTime(mqtt.lastConnectedAt)],
    [t.reconnects, format.integer(mqtt.reconnects)],
    [t.lastError, mqtt.lastError],
  ] as const;
  return (
    <section className="rc-sheet table-part" aria-labelledby="ingest-broker">
      <h2 id="ingest-broker">
        {t.broker}: <span className={mqtt.state === 'connecting' ? 'rc-broken' : undefined}>{t[mqtt.state]}</span>
      </h2>
      <dl className="table-figures">
        {facts.map(
          ([word, fact]) =>
            fact !== null && (
              <div key={word}>
                <dt>{word}</dt>
                <dd>{fact}</dd>
              </div>
            ),
        )}
      </dl>
    </section>
  );
}

function Ways({ ingest: { ways } }: { ingest: Ingest }) {
  const t = useMessages(ingestMessages);
  const format = useFormats();
  const wayWord = (way: string) => (way === 'mqtt' || way === 'http' || way === 'csv' ? t[way] : way);
  return (
    <section aria-labelledby="ingest-ways">
      <h2 id="ingest-ways">{t.ways}</h2>
      <div className="table-scroll rc-sheet" tabIndex={0} role="group" aria-labelledby="ingest-ways">
        <table className="rc-table">
          <HeadRow heads={[t.way, ...[t.received, t.stored, t.duplicates, t.notStored].map(figure)]} />
          <tbody>
            {ways.map((way) => (
              <tr key={way.way}>
                <th scope="row">{wayWord(way.way)}</th>
                <td className="rc-number">{format.integer(way.received)}</td>
                <td className="rc-number">{format.integer(way.stored)}</td>
                <td className="rc-number">{format.integer(way.duplicates)}</td>
                <td className={`rc-number ${notStored(way) > 0 ? 'rc-at-risk' : ''}`}>
                  {notStored(way) > 0 && '▲ '}
                  {format.integer(notStored(way))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function UnknownTopics({ ingest }: { ingest: Ingest }) {
  const t = useMessages(ingestMessages);
  const format = useFormats();
  const topics = ingest.unknownTopics;
  return (
    <section aria-labelledby="ingest-unknown">
      <h2 id="ingest-unknown">{t.unmapped}</h2>
      <p className="rc-quiet">{topics.length === 0 ? t.unmappedNone : t.unmappedHelp}</p>
      {topics.length > 0 && (
        <div className="table-scroll rc-sheet" tabIndex={0} role="group" aria-labelledby="ingest-unknown">
          <table className="rc-table">
            <HeadRow heads={[t.topic, figure(t.count), t.lastSeen, t.message, spoken(t.make)]} />
            <tbody>
              {topics.map(({ topic, count, last, at }) => (
                <tr key={topic}>
                  <th scope="row" className="readings-topic">
                    {topic}
                  </th>
                  <td className="rc-number">{format.integer(count)}</td>
                  <td>{format.dateTime(at)}</td>
                  <td className="readings-message">{last}</td>
                  <td>
                    <Link className="rc-link" to={sensorFrom(topic)} aria-label={t.makeOf(topic)}>
                      {t.make}
                    </Link>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function Faults({ ingest: { ways } }: { ingest: Ingest }) {
  const t = useMessages(ingestMessages);
  const climate: Readonly<Record<string, unknown>> = useMessages(climateMessages);
  const format = useFormats();
  const own: Readonly<Record<string, unknown>> = t;
  const kindWord = (kind: string) => String(own[kind] ?? climate[kind] ?? kind);
  const wayWord = (way: string) => String(own[way] ?? way);
  const faults = ways.flatMap((way) => way.faults.map((fault) => ({ way: way.way, fault })));
  return (
    <section aria-labelledby="ingest-faults">
      <h2 id="ingest-faults">{t.faults}</h2>
      {faults.length === 0 ? (
        <p className="rc-quiet">{t.noFaults}</p>
      ) : (
        <div className="table-scroll rc-sheet" tabIndex={0} role="group" aria-labelledby="ingest-faults">
          <table className="rc-table readings-faults">
            <HeadRow heads={[t.fault, t.way, figure(t.count), t.last]} />
            <tbody>
              {faults.map(({ way, fault }) => (
                <tr key={`${way} ${fault.kind}`}>
                  <th scope="row">{kindWord(fault.kind)}</th>
                  <td>{wayWord(way)}</td>
                  <td className="rc-number">{format.integer(fault.count)}</td>
                  <td>
                    <LastOnes fault={fault} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function LastOnes({ fault }: { fault: IngestFault }) {
  const format = useFormats();
  const speaker = useSpeaker();
  return (
    <ul className="readings-last">
      {fault.last.map(({ what, why, at }, i) => (
        <li key={i}>
          <span className="rc-quiet">{format.dateTime(at)}</span> <span className="readings-message">{what}</span>
          {why && `: ${readingSaid(why, speaker)}`}
        </li>
      ))}
    </ul>
  );
}

function SetApart({ refused: { count, last } }: { refused: Ingest['refused'] }) {
  const t = useMessages(ingestMessages);
  const format = useFormats();
  return (
    <section aria-labelledby="ingest-apart">
      <h2 id="ingest-apart">{t.apart}</h2>
      <p className="rc-quiet">{t.apartHelp(format.integer(count))}</p>
      <div className="table-scroll rc-sheet" tabIndex={0} role="group" aria-labelledby="ingest-apart">
        <table className="rc-table">
          <HeadRow heads={[t.topic, t.came, t.message]} />
          <tbody>
            {last.map(({ id, topic, payload, at }) => (
              <tr key={id}>
                <th scope="row" className="readings-topic">
                  {topic}
                </th>
                <td>{format.dateTime(at)}</td>
                <td className="readings-message">{payload}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
