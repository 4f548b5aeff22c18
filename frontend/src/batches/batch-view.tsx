import { Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';

export function BatchStory() {
  useScreenTitle('Batch');
  return <Loading />;
}
