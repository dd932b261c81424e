import './fields.css';
import { Group, Input } from '@mantine/core';
import { MONTHS } from '../../../shared/farm/field.js';
import { Select } from './select.js';

const twoDigits = (number: number): string => String(number).padStart(2, '0');
const MONTH_CHOICES = MONTHS.map((name, k) => ({ id: twoDigits(k + 1), name }));
/** The 29th of February is a day of some years. */
const MOST_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A day of no particular year, such as a frost date: month by name, then the day. */
export function MonthDayField({
  label,
  value,
  error,
  onChange,
}: {
  label: string;
  /** Month and day, such as 05-20; nothing or an empty text for none. */
  value: string | undefined;
  error?: string | undefined;
  onChange: (value: string) => void;
}) {
  const [month = '', day = ''] = (value ?? '').split('-');
  const most = MOST_DAYS[Number(month) - 1] ?? 31;
  const choose = (m: string | undefined, d: string): void =>
    onChange(
      m === undefined ? '' : `${m}-${d === '' || MOST_DAYS[Number(m) - 1]! < Number(d) ? '01' : d}`,
    );
  return (
    <Input.Wrapper label={label} error={error} component="fieldset" className="plain-fieldset">
      <Group gap="xs" grow>
        <Select
          aria-label={`${label}: month`}
          value={month || undefined}
          options={MONTH_CHOICES}
          none="month"
          onChange={(m) => choose(m, day)}
        />
        <Select
          aria-label={`${label}: day`}
          value={day || undefined}
          options={Array.from({ length: most }, (_, k) => ({
            id: twoDigits(k + 1),
            name: String(k + 1),
          }))}
          none="day"
          disabled={month === ''}
          onChange={(d) => choose(month, d ?? '')}
        />
      </Group>
    </Input.Wrapper>
  );
}
