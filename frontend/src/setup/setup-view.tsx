import { Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';

export function SetupView() {
  useScreenTitle('Setup');
  return <Loading />;
}
