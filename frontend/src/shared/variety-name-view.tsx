import { nameParts } from './variety-name';
import './variety-name.css';

/** The name with the cultivar first for the eye; in the text, and for those who hear it, as the code writes it. */
export function VarietyName({ name, className = '' }: { name: string; className?: string }) {
  const { cultivar, kind } = nameParts(name);
  return (
    <span className={`variety-name ${className}`}>
      {kind !== '' && <span className="variety-kind">{kind} </span>}
      <span className="variety-cultivar">{cultivar}</span>
    </span>
  );
}
