import { TextArea } from '@vaadin/react-components/TextArea.js';
import { useMessages } from '../shared/messages';
import { NumberInput } from '../shared/number-input';
import { usePreferences } from '../shared/preferences';
import { unitName } from '../shared/reading-units';
import { TextInput } from '../shared/text-input';
import { temperatureUnitName } from '../shared/units';
import { ChoiceField } from './choice-field';
import { setupMessages } from './setup-messages';
import { sourceSaid } from './source-words';
import type { Draft, Field, Item, ListName, Units } from './setup-state';

interface SetupFieldProps {
  readonly list: ListName;
  readonly field: Field;
  readonly draft: Draft;
  readonly fault: string | undefined;
  readonly units: Units;
  readonly items: Readonly<Record<ListName, readonly Item[]>>;
  readonly fixed: boolean;
  readonly put: (text: string) => void;
}

/** One field of a form of Setup, as its kind wants it. */
export function SetupField({ list, field, draft, fault, units, items, fixed, put }: SetupFieldProps) {
  const t = useMessages(setupMessages);
  const { language } = usePreferences();
  const value = draft[field.path] ?? '';
  const key = (field.path.split('.').at(-1) ?? field.path) as keyof typeof t;
  const level = /^levels\.(?<place>\d)$/.exec(field.path)?.groups?.['place'];
  const named: Partial<Record<string, string>> = { 'next.house': t.nextHouse, 'next.onceReached': t.nextReached };
  const label = named[field.path] ?? (level === undefined ? (t[key] as string) : t.level(Number(level) + 1));
  const hints: Partial<Record<string, string>> = {
    code: fixed ? undefined : t.codeHint,
    name: list === 'varieties' ? t.varietyHint : undefined,
    mediumSetpointC: t.setpointHint,
    saleCount: t.saleCountHint,
    daysDoubt: t.daysDoubtHint,
    rateSpread: t.rateSpreadHint,
    cellSpread: t.cellSpreadHint,
    holdDays: t.holdDaysHint,
    topic: t.topicHint,
    offset: t.offsetHint,
    '0': t.driestHint,
    '4': t.wettestHint,
  };
  const hint = hints[key];
  switch (field.kind) {
    case 'choice':
      return (
        <ChoiceField
          path={field.path}
          label={label}
          value={value}
          fault={fault}
          items={items}
          draft={draft}
          put={put}
          required={!field.optional}
        />
      );
    case 'code':
    case 'text':
      if (key === 'note') {
        const note = sourceSaid(value, language);
        return (
          <TextArea
            className="setup-note"
            label={label}
            value={note}
            manualValidation
            invalid={fault !== undefined}
            errorMessage={fault ?? ''}
            onValueChanged={({ detail }) => {
              if (detail.value !== note) put(detail.value);
            }}
          />
        );
      }
      return (
        <TextInput
          label={label}
          value={value}
          readonly={fixed}
          required={!field.optional}
          hint={hint}
          fault={fault}
          onValue={put}
        />
      );
    default:
      return (
        <NumberInput
          label={label}
          value={value}
          fault={fault}
          required={!field.optional || level !== undefined}
          whole={field.kind === 'whole'}
          {...(hint === undefined ? {} : { hint })}
          {...(field.kind === 'temperature' ? { unit: temperatureUnitName(units.temperature) } : {})}
          {...(field.kind === 'length' ? { unit: units.length } : {})}
          {...(field.kind === 'percent' ? { unit: '%' } : {})}
          {...((key === 'offset' || level !== undefined) && draft['unit'] ? { unit: unitName(draft['unit']) } : {})}
          onValue={put}
        />
      );
  }
}
