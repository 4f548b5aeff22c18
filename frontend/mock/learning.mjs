/** The mock's outlook that learns: which request is whose. */
import { notFound } from './common.mjs';
import * as data from './data.mjs';
import { entriesOf, recordEntry } from './entries.mjs';
import { development, explanation, whatIf } from './outlook.mjs';
import { adopt, learn, versionsOf } from './profiles.mjs';
import { trackRecord } from './track-record.mjs';

/** The answer to a request of this half of the contract; undefined when it is none of its. */
export function answerLearning(method, path, query, body) {
  const [name, id, part, version] = path.split('/').slice(2).map(decodeURIComponent);
  if (name === 'track-record') return [200, trackRecord(query)];
  if (name === 'what-if' && method === 'POST') return whatIf(body, query);
  if (name === 'batches' && part !== undefined) {
    const batch = data.batches.find((each) => each.id === id);
    if (!batch) return notFound;
    if (part === 'entries') return method === 'POST' ? recordEntry(batch, body) : [200, entriesOf(batch)];
    if (part === 'development') return [200, development(batch)];
    if (part === 'explanation') return [200, explanation(batch)];
  }
  if (name === 'crops' && (part === 'profiles' || part === 'learning')) {
    const crop = data.crops.find((each) => each.code === id);
    if (!crop) return notFound;
    if (part === 'learning') return learn(crop);
    return version === undefined ? [200, versionsOf(crop)] : adopt(crop, version, body);
  }
  return undefined;
}
