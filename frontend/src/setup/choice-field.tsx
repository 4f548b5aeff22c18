import { ComboBox } from '@vaadin/react-components/ComboBox.js';
import { useState } from 'react';
import { useMessages } from '../shared/messages';
import { setupMessages } from './setup-messages';
import type { Item, ListName } from './setup-state';

interface ChoiceFieldProps {
  readonly path: string;
  readonly label: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
  readonly required: boolean;
  readonly put: (text: string) => void;
}

const SHIP_DAYS = ['MONDAY', 'TUESDAY', 'WEDNESDAY', 'THURSDAY', 'FRIDAY', 'SATURDAY', 'SUNDAY'] as const;

/** A field that names one of another list, a time zone or a day of the week. */
export function ChoiceField({ path, label, value, fault, items, required, put }: ChoiceFieldProps) {
  const t = useMessages(setupMessages);
  const named = (list: ListName) =>
    items[list].map((item) => ({ value: String(item['code']), label: String(item['name']) }));
  const choices: Record<string, () => { value: string; label: string }[]> = {
    site: () => named('sites'),
    crop: () => named('crops'),
    timeZone: () => Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone })),
    shipDay: () => SHIP_DAYS.map((day) => ({ value: day, label: t[day] })),
  };
  const [options] = useState(() => choices[path]?.() ?? []);
  return (
    <ComboBox
      label={label}
      items={options}
      itemValuePath="value"
      itemLabelPath="label"
      value={value}
      required={required}
      helperText={path === 'shipDay' ? t.shipDayHint : ''}
      manualValidation
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      onValueChanged={({ detail }) => {
        if (detail.value !== value) put(detail.value);
      }}
    />
  );
}
