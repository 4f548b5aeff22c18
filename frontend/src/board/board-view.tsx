import { Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';

export function BoardView() {
  useScreenTitle('Board');
  return <Loading />;
}
