import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { useMemo } from 'react';
import { climateMessages } from '../climate/climate-messages';
import { useMessages } from '../shared/messages';
import { LIGHT_SOURCES, MEASURED, unitName, unitsOf } from '../shared/reading-units';
import { setupMessages } from './setup-messages';
import type { Draft, Item, ListName } from './setup-state';

interface ChoiceFieldProps {
  readonly path: string;
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
  readonly required: boolean;
  /** The whole form: what a sensor measures says its units, where a house stands which others it has beside it. */
  readonly draft: Draft;
  readonly put: (text: string) => void;
}

const SHIP_DAYS = ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY', 'SATURDAY', 'SUNDAY'] as const;

/** A field that names one of another list, a time zone, a day of the week, or what a sensor measures. */
export function ChoiceField({ path, label, value, fault, items, required, draft, put }: ChoiceFieldProps) {
  const t = useMessages(setupMessages);
  const climate = useMessages(climateMessages);
  const { quantity, site, code } = draft;
  const options = useMemo(() => {
    const named = (list: ListName) =>
      items[list].map((item) => ({ value: String(item['code']), label: String(item['name']) }));
    const choices: Record<string, () => { value: string; label: string }[]> = {
      site: () => named('sites'),
      crop: () => named('crops'),
      house: () => named('houses'),
      'next.house': () =>
        items.houses
          .filter((house) => house['site'] === site && house['code'] !== code)
          .map((house) => ({ value: String(house['code']), label: String(house['name']) })),
      'next.onceReached': () => [
        { value: 'CALLUS', label: t.onceCallused },
        { value: 'ROOT', label: t.onceRooted },
      ],
      timeZone: () => Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone })),
      shipDay: () => SHIP_DAYS.map((day) => ({ value: day, label: t[day] })),
      quantity: () => MEASURED.map((each) => ({ value: each, label: climate[each] })),
      // One that no longer fits stays to be seen, and is refused.
      unit: () =>
        [...new Set([...unitsOf(quantity), ...(value ? [value] : [])])].map((unit) => ({
          value: unit,
          label: unitName(unit),
        })),
      lightSource: () => LIGHT_SOURCES.map((each) => ({ value: each, label: t[each] })),
    };
    return choices[path]?.() ?? [];
  }, [path, items, quantity, site, code, value, t, climate]);
  const hints: Partial<Record<string, string>> = {
    shipDay: t.shipDayHint,
    lightSource: t.lightSourceHint,
    'next.house': t.nextHouseHint,
  };
  return (
    <ComboBox
      label={label}
      items={options}
      itemValuePath="value"
      itemLabelPath="label"
      value={value}
      required={required}
      clearButtonVisible={path.startsWith('next.')}
      helperText={hints[path] ?? ''}
      manualValidation
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      onValueChanged={({ detail }) => {
        if (detail.value !== value) put(detail.value);
      }}
    />
  );
}
