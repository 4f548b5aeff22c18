import { useId, useState } from 'react';
import type { SeededCrop } from '../shared/api-types';
import { useMessages } from '../shared/messages';
import { usePreferences } from '../shared/preferences';
import { useSeededCrops } from '../shared/setup-lists';
import { sourcesOf, type Start } from './crop-form-state';
import { setupMessages } from './setup-messages';
import { figureLabel } from './source-words';
import type { Item } from './setup-state';

interface CropStartProps {
  readonly crops: readonly Item[];
  readonly start: (start: Start, seeded: boolean) => void;
}

/** What a new crop begins with: another of the business, or a profile that comes with the application. */
export function CropStart({ crops, start }: CropStartProps) {
  const t = useMessages(setupMessages);
  const id = useId();
  const seeds = useSeededCrops().data ?? [];
  const [chosen, setChosen] = useState('');
  const choose = (value: string) => {
    setChosen(value);
    const [kind, code] = value.split(' ');
    const of: readonly Start[] = kind === 'seeded' ? seeds : (crops as unknown as readonly Start[]);
    const found = of.find((each) => each.code === code);
    if (found) start(found, kind === 'seeded');
  };
  const seed = seeds.find((each) => chosen === `seeded ${each.code}`);
  return (
    <div className="crop-start">
      <label htmlFor={id}>{t.startFrom}</label>
      <select id={id} className="rc-select" value={chosen} onChange={(event) => choose(event.target.value)}>
        <option value="" disabled>
          {t.choose}
        </option>
        {crops.length > 0 && (
          <optgroup label={t.startOwn}>
            {crops.map(({ code, name }) => (
              <option key={String(code)} value={`own ${String(code)}`}>
                {String(name)}
              </option>
            ))}
          </optgroup>
        )}
        <optgroup label={t.startSeeded}>
          {seeds.map(({ code, name }) => (
            <option key={code} value={`seeded ${code}`}>
              {name}
            </option>
          ))}
        </optgroup>
      </select>
      {chosen !== '' && (
        <p className="rc-quiet" role="status">
          {t.startFilled}
        </p>
      )}
      {seed && <SeedSources seed={seed} />}
    </div>
  );
}

/** Where a seeded profile's figures come from. */
export function SeedSources({ seed }: { seed: SeededCrop }) {
  const t = useMessages(setupMessages);
  const { language } = usePreferences();
  return (
    <details className="rc-small seed-sources">
      <summary>{t.sources}</summary>
      <ul>
        {sourcesOf(seed).map(({ published, work, figures }) => (
          <li key={work}>
            {published ? t.published(work) : t.commonPractice}:{' '}
            {figures.map((figure) => figureLabel(figure, language)).join(', ')}
          </li>
        ))}
      </ul>
    </details>
  );
}
