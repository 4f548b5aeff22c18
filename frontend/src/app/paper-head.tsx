import { useAbout } from '../shared/about';
import { useFormats } from '../shared/formats';
import { useNow } from '../shared/now';

/** Whose sheet it is and of when: on the paper of every screen, and nowhere else. */
export function PaperHead() {
  const format = useFormats();
  const business = useAbout().data?.business;
  const at = format.dateTime(new Date(useNow()).toISOString());
  return <p className="paper-head">{business ? `${business} · ${at}` : at}</p>;
}
