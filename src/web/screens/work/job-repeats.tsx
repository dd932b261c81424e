import { Checkbox, Group } from '@mantine/core';
import type { ReactNode } from 'react';
import type { OwnJob } from '../../../../shared/farm/job.js';
import { repeatFields, type Repeats } from '../../../../shared/farm/repeats.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import { formatWeekday } from '../../../../shared/units/dates.js';
import type { SavedFarm } from '../../api/queries.js';
import { DateField } from '../../fields/date-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';

const FIELDS = repeatFields.fields;
const EVERY = [
  { id: '', name: 'once' },
  { id: 'day', name: 'every day' },
  { id: 'weekdays', name: 'every week' },
  { id: 'days', name: 'every so many days' },
];
const WEEK = [1, 2, 3, 4, 5, 6, 7];

/** How a job comes again, and until when; more often than weekly it is done on its day like a chore. */
export function JobRepeats({
  farm,
  repeats,
  events,
  errorAt,
  onChange,
}: {
  farm: SavedFarm;
  repeats: OwnJob['repeats'];
  events: readonly KeyDate[];
  errorAt: (field: string) => ReactNode;
  onChange: (repeats: Repeats | undefined) => void;
}) {
  return (
    <>
      <Select
        label={FIELDS.every.label}
        value={repeats?.every ?? ''}
        error={errorAt('repeats')}
        options={EVERY}
        onChange={(every) =>
          onChange(every ? { ...repeats, every: every as Repeats['every'] } : undefined)
        }
      />
      {repeats?.every === 'weekdays' && (
        <Checkbox.Group
          label={FIELDS.weekdays.label}
          value={(repeats.weekdays ?? []).map(String)}
          error={errorAt('repeats.weekdays')}
          onChange={(days) => onChange({ ...repeats, weekdays: days.map(Number).sort() })}
        >
          <Group gap="xs" mt={6}>
            {WEEK.map((day) => (
              <Checkbox key={day} value={String(day)} label={formatWeekday(day)} />
            ))}
          </Group>
        </Checkbox.Group>
      )}
      {repeats?.every === 'days' && (
        <QuantityInput
          field={FIELDS.everyDays}
          units={farm.units}
          value={repeats.everyDays}
          error={errorAt('repeats.everyDays')}
          onChange={(everyDays) => onChange(withEveryDays(repeats, everyDays))}
        />
      )}
      {repeats && <Until repeats={repeats} events={events} error={errorAt} onChange={onChange} />}
    </>
  );
}

function Until({
  repeats,
  events,
  error,
  onChange,
}: {
  repeats: Repeats;
  events: readonly KeyDate[];
  error: (field: string) => ReactNode;
  onChange: (repeats: Repeats) => void;
}) {
  const { until: _until, untilTiedTo: _tied, ...open } = repeats;
  return (
    <>
      <Select
        label={FIELDS.untilTiedTo.label}
        value={repeats.untilTiedTo?.eventId ?? ''}
        error={error('repeats.untilTiedTo')}
        options={[{ id: '', name: 'nothing: a date, or no end' }, ...events]}
        onChange={(id) => {
          const event = events.find((each) => each.id === id);
          const tied = event && { eventId: event.id, on: event.date };
          onChange(event && tied ? { ...open, until: event.date, untilTiedTo: tied } : open);
        }}
      />
      <DateField
        label={FIELDS.until.label}
        value={repeats.until}
        error={error('repeats.until')}
        onChange={(until) => onChange(until === undefined ? open : { ...open, until })}
      />
    </>
  );
}

function withEveryDays(repeats: Repeats, everyDays: number | undefined): Repeats {
  const { everyDays: _before, ...rest } = repeats;
  return everyDays === undefined ? rest : { ...rest, everyDays };
}
