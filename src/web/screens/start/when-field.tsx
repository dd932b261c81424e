import { weekdayOf } from '../../../../shared/calendar/plain-date.js';
import { formatMonth, formatWeekday } from '../../../../shared/units/dates.js';
import { Select } from '../../fields/select.js';
import { daysIn, monthsAhead, type WhenDraft } from './start-draft.js';

const HERE = { id: 'here', name: 'they are here' };

/** When something comes: a month, and then a day of it for those who know it. */
export function WhenField({
  label,
  timeZone,
  value,
  none,
  noDay,
  isHere = false,
  onHere,
  onChange,
}: {
  label: string;
  timeZone: string | undefined;
  value: WhenDraft | undefined;
  /** What holds while nothing is chosen, of the month and of its days; no day is asked without. */
  none: string;
  noDay?: string | undefined;
  /** Left out where nothing can be here already, or where that is what none means. */
  isHere?: boolean | undefined;
  onHere?: ((isHere: boolean) => void) | undefined;
  onChange: (when: WhenDraft | undefined) => void;
}) {
  return (
    <>
      <Select
        label={`${label}: when`}
        value={isHere ? HERE.id : value?.month}
        options={[
          ...(onHere ? [HERE] : []),
          ...monthsAhead(timeZone).map((id) => ({ id, name: formatMonth(id) })),
        ]}
        none={none}
        onChange={(chosen) => {
          const isNowHere = chosen === HERE.id;
          onHere?.(isNowHere);
          onChange(chosen === undefined || isNowHere ? undefined : { month: chosen });
        }}
      />
      {value && noDay !== undefined && (
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
