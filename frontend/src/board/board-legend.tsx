import { useFormats } from '../shared/formats';
import { useMessages } from '../shared/messages';
import { boardMessages } from './board-messages';

/** What the figures of a cell are, for whoever asks. */
export function BoardLegend({ confidence }: { confidence: number }) {
  const t = useMessages(boardMessages);
  const format = useFormats();
  return (
    <details className="board-legend rc-no-print">
      <summary>{t.legend}</summary>
      <ul>
        <li>
          <span className="key-figure">12</span> {t.legendOpen(format.percent(confidence, 2))}
        </li>
        <li>
          <i>{t.legendLikely}</i>
        </li>
        <li>20 / 8 {t.legendSmall}</li>
        <li>{t.legendLessSure}</li>
        <li className="rc-at-risk">{t.legendRisk}</li>
        <li>{t.legendDay}</li>
      </ul>
    </details>
  );
}
