import { Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';

export function BatchesView() {
  useScreenTitle('Batches');
  return <Loading />;
}
