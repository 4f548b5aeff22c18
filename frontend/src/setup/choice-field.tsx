import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { useMemo } from 'react';
import { climateMessages } from '../climate/climate-messages';
import { useMessages } from '../shared/messages';
import { LIGHT_SOURCES, MEASURED, unitName, unitsOf } from '../shared/reading-units';
import { setupMessages } from './setup-messages';
import type { Item, ListName } from './setup-state';

interface ChoiceFieldProps {
  readonly path: string;
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
  readonly required: boolean;
  /** What the sensor measures, which says its units. */
  readonly quantity: string | undefined;
  readonly put: (text: string) => void;
}

const SHIP_DAYS = ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY', 'SATURDAY', 'SUNDAY'] as const;

/** A field that names one of another list, a time zone, a day of the week, or what a sensor measures. */
export function ChoiceField({ path, label, value, fault, items, required, quantity, put }: ChoiceFieldProps) {
  const t = useMessages(setupMessages);
  const climate = useMessages(climateMessages);
  const options = useMemo(() => {
    const named = (list: ListName) =>
      items[list].map((item) => ({ value: String(item['code']), label: String(item['name']) }));
    const choices: Record<string, () => { value: string; label: string }[]> = {
      site: () => named('sites'),
      crop: () => named('crops'),
      house: () => named('houses'),
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
  }, [path, items, quantity, value, t, climate]);
  return (
    <ComboBox
      label={label}
      items={options}
      itemValuePath="value"
      itemLabelPath="label"
      value={value}
      required={required}
      helperText={path === 'shipDay' ? t.shipDayHint : path === 'lightSource' ? t.lightSourceHint : ''}
      manualValidation
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      onValueChanged={({ detail }) => {
        if (detail.value !== value) put(detail.value);
      }}
    />
  );
}
