import { weekdayOf } from '../../../../shared/calendar/plain-date.js';
import { formatMonth, formatWeekday } from '../../../../shared/units/dates.js';
import { Select } from '../../fields/select.js';
import { daysIn, monthsAhead, type WhenDraft } from './start-draft.js';

/** When something comes: a month, and then a day of it for those who know it. */
export function WhenField({
  label,
  timeZone,
  value,
  none,
  noDay,
  onChange,
}: {
  label: string;
  timeZone: string | undefined;
  value: WhenDraft | undefined;
  /** What holds while nothing is chosen, of the month and of its days. */
  none: string;
  noDay: string;
  onChange: (when: WhenDraft | undefined) => void;
}) {
  return (
    <>
      <Select
        label={`${label}: when`}
        value={value?.month}
        options={monthsAhead(timeZone).map((id) => ({ id, name: formatMonth(id) }))}
        none={none}
        onChange={(month) => onChange(month === undefined ? undefined : { month })}
      />
      {value && (
        <Select
          label={`${label}: day`}
          value={value.day}
          options={daysIn(value.month, timeZone).map((id) => ({ id, name: dayName(id) }))}
          none={noDay}
          onChange={(day) => onChange({ month: value.month, day })}
        />
      )}
    </>
  );
}

const dayName = (date: string): string =>
  `${formatWeekday(weekdayOf(date)).slice(0, 3)} ${Number(date.slice(8))}`;
