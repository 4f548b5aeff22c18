import { DatePicker, type DatePickerI18n } from '@vaadin/react-components/DatePicker.js';
import { useMemo } from 'react';
import { flushSync } from 'react-dom';
import { ownDates } from './date-order';
import { useFormats } from './formats';
import { usePreferences } from './preferences';
import { dateTyped, dateWritten, type DateReader } from './typed-date';
import { isDate, weekNumber, weekOf } from './weeks';
import { useMessages } from './messages';
import { sharedMessages } from './shared-messages';

/**
 * A field for one date, in the reader's order and with the month in words; the day of the week and the ISO week stand
 * below. What cannot be read as a date stays as typed and is marked.
 */
export interface DateInputProps {
  readonly label: string;
  /** `YYYY-MM-DD`, or empty. */
  readonly value: string;
  readonly onValue: (date: string) => void;
  readonly fault?: string | undefined;
  readonly required?: boolean;
}

export function DateInput({ label, value, onValue, fault, required }: DateInputProps) {
  const format = useFormats();
  const { language } = usePreferences();
  const t = useMessages(sharedMessages);
  const words = useMemo(() => calendarWords({ language, dates: ownDates(language) }), [language]);
  const spoken = isDate(value) ? `${format.date(value)}, ${t.weekWord} ${weekNumber(weekOf(value))}` : '';
  return (
    <DatePicker
      label={label}
      value={value}
      i18n={words}
      showWeekNumbers
      helperText={spoken}
      required={required ?? false}
      manualValidation
      // Typing needs no calendar over the next field; its button opens it.
      autoOpenDisabled
      invalid={fault !== undefined}
      errorMessage={fault ?? ''}
      onValueChanged={(event) => {
        // Enter commits the typed date and submits the form in one go: the form must hold the date by then.
        if (event.detail.value !== value) flushSync(() => onValue(event.detail.value));
      }}
      onUnparsableChange={() => flushSync(() => onValue(''))}
    />
  );
}

function calendarWords(reader: DateReader): DatePickerI18n {
  const { language } = reader;
  const name = (date: Date, options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' }).format(date);
  // 4 January 1970 was a Sunday.
  const days = (weekday: 'long' | 'short') =>
    Array.from({ length: 7 }, (_, i) => name(new Date(Date.UTC(1970, 0, 4 + i)), { weekday }));
  return {
    monthNames: Array.from({ length: 12 }, (_, i) => name(new Date(Date.UTC(1970, i, 1)), { month: 'long' })),
    weekdays: days('long'),
    weekdaysShort: days('short'),
    firstDayOfWeek: 1,
    today: language === 'es' ? 'Hoy' : 'Today',
    cancel: language === 'es' ? 'Cancelar' : 'Cancel',
    formatDate: ({ year, month, day }) =>
      dateWritten(`${year}-${String(month + 1).padStart(2, '0')}-${String(day).padStart(2, '0')}`, reader),
    parseDate: (text) => {
      const date = dateTyped(text, reader);
      if (date === undefined) return undefined;
      const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
      return { year, month: month - 1, day };
    },
  };
}
