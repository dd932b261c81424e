import { SimpleGrid, Switch, Text } from '@mantine/core';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { DateField } from '../../fields/date-input.js';
import { Select } from '../../fields/select.js';
import { WEEKDAY_CHOICES } from './batch-labels.js';
import { FIELDS, OrderNumber, type FormProps } from './form-fields.js';
import { NO_SLOT, NOT_AT_HOME } from './no-processing.js';

/** Who processes them, when, and with what. */
export function LastDayFields({ form, strain }: { form: FormProps; strain: Strain }) {
  const { draft, errors, onChange } = form;
  const isHired = draft.processing === 'hired' || draft.slotDate !== undefined;
  return (
    <>
      <Select
        label={FIELDS.processing.label}
        value={isHired ? 'hired' : 'home'}
        error={errors['processing']}
        onChange={(processing) =>
          onChange({ processing, ...(processing === 'hired' ? NOT_AT_HOME : NO_SLOT) })
        }
        options={[
          { id: 'home', name: 'At home' },
          { id: 'hired', name: 'By a hired processor' },
        ]}
      />
      {isHired && (
        <>
          <DateField
            label={FIELDS.slotDate.label}
            value={draft.slotDate}
            error={errors['slotDate']}
            onChange={(slotDate) =>
              onChange(slotDate === undefined ? NO_SLOT : { slotDate, processing: 'hired' })
            }
          />
          {draft.slotDate !== undefined && <OrderNumber form={form} field="slotBirds" />}
        </>
      )}
      {draft.slotDate === undefined && (
        <>
          <OrderNumber form={form} field="leaveAgeDays" usual={strain.leave.ageDays} />
          <Weekday form={form} field="processingWeekday" />
        </>
      )}
      {!isHired && <AtHome form={form} />}
    </>
  );
}

function AtHome({ form }: { form: FormProps }) {
  const { draft, errors, onChange } = form;
  return (
    <>
      <OrderNumber form={form} field="processingHelpers" />
      {0 < (draft.processingHelpers ?? 0) && <Weekday form={form} field="helpersWeekday" />}
      <Switch
        size="md"
        label={FIELDS.processingIsFirst.label}
        checked={draft.processingIsFirst === true}
        onChange={({ currentTarget: { checked } }) =>
          onChange({ processingIsFirst: checked ? true : undefined })
        }
      />
      <Select
        label={FIELDS.plucking.label}
        value={draft.plucking ?? 'machine'}
        error={errors['plucking']}
        onChange={(plucking) =>
          onChange({ plucking, ...(plucking === 'hand' ? { pluckerBirds: undefined } : {}) })
        }
        options={[
          { id: 'machine', name: 'By machine' },
          { id: 'hand', name: 'By hand' },
        ]}
      />
      <Text size="sm" c="dimmed">
        Leave a box empty where it holds nobody up.
      </Text>
      <SimpleGrid cols={2} style={{ alignItems: 'end' }}>
        <OrderNumber form={form} field="killingCones" />
        <OrderNumber form={form} field="scalderBirds" />
        {draft.plucking !== 'hand' && <OrderNumber form={form} field="pluckerBirds" />}
      </SimpleGrid>
    </>
  );
}

function Weekday({
  form: { draft, errors, onChange },
  field,
}: {
  form: FormProps;
  field: 'processingWeekday' | 'helpersWeekday';
}) {
  const value = draft[field];
  return (
    <Select
      label={FIELDS[field].label}
      value={value === undefined ? undefined : `${value}`}
      error={errors[field]}
      onChange={(day) => onChange({ [field]: day === undefined ? undefined : Number(day) })}
      options={WEEKDAY_CHOICES}
      none="Any day"
    />
  );
}
