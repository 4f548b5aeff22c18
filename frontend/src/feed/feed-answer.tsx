import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import type { FeedAnswer } from './feed-api';
import { feedMessages } from './feed-messages';
import { digitsFor, unitName, type Amount, type Calculation } from './feed-state';

/** The answer in a sentence, and every amount in the units of both systems. */
export function FeedAnswerPanel({ calculation, answer }: { calculation: Calculation; answer: FeedAnswer }) {
  const t = useMessages(feedMessages);
  const format = useFormats();
  const figure = (value: number) => format.decimal(value, digitsFor(value));
  const said = () => {
    switch (calculation) {
      case 'stock':
        return t.perLitre(figure(answer.gramsPerLitre ?? 0), figure(answer.ouncesPerGallon ?? 0));
      case 'strength':
        return t.strengthSaid(figure(answer.ppm ?? 0));
      case 'injector':
        return t.injectorSaid(answer.ratio ?? '');
      case 'ec':
        return t.ecSaid(figure(answer.feedMsPerCm ?? 0), figure(answer.ppm ?? 0));
      case 'dilution':
        return answer.label ?? '';
    }
  };
  return (
    <section aria-label={t.answer} className="feed-answer rc-sheet" role="status">
      {answer.fertilizer && <Amounts name={t.weighIn} amounts={answer.fertilizer} />}
      {answer.product && <Amounts name={t.measureOut} amounts={answer.product} />}
      <p className={answer.fertilizer || answer.product ? undefined : 'feed-main'}>{said()}</p>
      {answer.sprayVolume && <Amounts name={t.forSpray} amounts={answer.sprayVolume} quiet />}
      {answer.feedVolume && <Amounts name={t.makes} amounts={answer.feedVolume} quiet />}
      {typeof answer.expectedMsPerCm === 'number' && <p>{t.meterShows(figure(answer.expectedMsPerCm))}</p>}
      {answer.cautions && <p className="rc-warning">▲ {t.dilutionCaution}</p>}
    </section>
  );
}

function Amounts({ name, amounts, quiet }: { name: string; amounts: readonly Amount[]; quiet?: boolean }) {
  const format = useFormats();
  return (
    <div className={quiet ? 'feed-amounts quiet' : 'feed-amounts'}>
      <span className="rc-quiet">{name}</span>
      <ul>
        {amounts.map(({ value, unit }) => (
          <li key={unit}>
            {format.decimal(value, digitsFor(value))} {unitName(unit)}
          </li>
        ))}
      </ul>
    </div>
  );
}
