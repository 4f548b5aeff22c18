import { Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';

export function FloorView() {
  useScreenTitle('Floor');
  return <Loading />;
}
