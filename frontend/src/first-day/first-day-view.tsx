import { Link } from 'react-router';
import { useMessages } from '../shared/messages';
import { Failed, Loading } from '../shared/screen-states';
import { useScreenTitle } from '../shared/screen-title';
import { useCrops, useSeededCrops, useSites, useTrayFormats } from '../shared/setup-lists';
import { CropsStep } from './crops-step';
import { firstDayMessages } from './first-day-messages';
import { FormatsStep } from './formats-step';
import { PlaceStep } from './place-step';
import { Step } from './step';
import './first-day.css';

/** From an empty business to its first board: four steps, each filled in as far as anybody could. */
export function FirstDayView() {
  const t = useMessages(firstDayMessages);
  useScreenTitle(t.title);
  const queries = [useSites(), useTrayFormats(), useCrops(), useSeededCrops()] as const;
  const [sites, formats, crops, seeds] = queries;
  const failed = queries.find((query) => query.isError && !query.data);
  if (failed) return <Failed failure={failed.error} retry={() => queries.forEach((query) => void query.refetch())} />;
  if (!sites.data || !formats.data || !crops.data || !seeds.data) return <Loading />;
  const ready = sites.data.length > 0 && formats.data.length > 0 && crops.data.length > 0;
  return (
    <div className="rc-screen first-day">
      <p className="rc-quiet">{t.help}</p>
      <PlaceStep sites={sites.data} />
      <FormatsStep formats={formats.data} />
      <CropsStep crops={crops.data} seeds={seeds.data} />
      <Step id="first-batches" title={t.batchesTitle} done={false}>
        <p className="rc-quiet">{ready ? t.batchesHelp : t.toImportLater}</p>
        {ready && (
          <p className="rc-row">
            <Link className="rc-link" to="/setup/batches">
              {t.toImport}
            </Link>
            <Link className="rc-link" to="/batches">
              {t.toBatches}
            </Link>
            <Link className="rc-link" to="/board">
              {t.toBoard}
            </Link>
          </p>
        )}
      </Step>
    </div>
  );
}
