import { useMessages } from '../shared/messages';
import { roundsMessages } from './rounds-messages';
import './moisture.css';

const LEVELS = [1, 2, 3, 4, 5] as const;

interface MoistureChoiceProps {
  /** 1 to 5, as typed; empty while none is chosen. */
  readonly value: string;
  readonly choose: (level: string) => void;
  readonly fault: string | undefined;
}

/** The five levels, each with its picture and what the hand feels. */
export function MoistureChoice({ value, choose, fault }: MoistureChoiceProps) {
  const t = useMessages(roundsMessages);
  return (
    <fieldset className="choices tall moisture-levels">
      <legend>
        {t.level} {fault && <span className="rc-broken">✕ {fault}</span>}
      </legend>
      {LEVELS.map((level) => (
        <button
          key={level}
          type="button"
          className="floor-button choice"
          aria-pressed={value === String(level)}
          aria-label={`${level}: ${t[`moisture${level}`]}`}
          onClick={() => choose(String(level))}
        >
          <CellPicture level={level} />
          <span className="moisture-level">{level}</span>
          <span className="choice-text">{t[`moisture${level}`]}</span>
        </button>
      ))}
    </fieldset>
  );
}

/** A cell of medium, filled as far as it is wet; on the fifth water stands on top. */
function CellPicture({ level }: { level: number }) {
  const height = Math.min(level, 4) * 5;
  return (
    <svg viewBox="0 0 24 28" width="24" height="28" aria-hidden="true" className="moisture-picture">
      <path d="M3 6 L6 26 L18 26 L21 6 Z" className="moisture-cell" />
      <clipPath id={`moisture-${level}`}>
        <path d="M3 6 L6 26 L18 26 L21 6 Z" />
      </clipPath>
      <rect
        x="2"
        y={26 - height}
        width="20"
        height={height}
        clipPath={`url(#moisture-${level})`}
        className="moisture-water"
      />
      {level === 5 && <path d="M2 4 Q7 1 12 4 T22 4" className="moisture-free" />}
    </svg>
  );
}
