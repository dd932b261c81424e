import { SimpleGrid, Text } from '@mantine/core';
import { hatchesHere, isStarted } from '../../../../shared/farm/batch-origin.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import { olderFlockOf } from '../../../../shared/plan/batch-request.js';
import { bagOf } from '../../../../shared/plan/prices.js';
import { usualOrder } from '../../../../shared/plan/usual-order.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { defaultRow, ofSpecies, rowById } from '../../../../shared/tables/tables.js';
import { DateField } from '../../fields/date-input.js';
import { Select } from '../../fields/select.js';
import { FIELDS, OrderNumber, type FormProps } from './form-fields.js';
import type { BatchDraft, Setting } from './use-plan.js';

/** What most households leave as it is: tables, rules, and figures of their own. */
export function MoreChoices({
  form,
  strain,
  young,
}: {
  form: FormProps;
  strain: Strain;
  /** What the young are called. */
  young: string;
}) {
  const { setting, draft, errors, onChange } = form;
  const { tables } = setting;
  const purpose = draft.purpose ?? 'meat';
  const isMeat = purpose === 'meat';
  const isOwn = hatchesHere(draft);
  const isGrown = isStarted(draft);
  const usual = usualOrder({ ...draft, purpose, strainId: strain.id }, tables);
  return (
    <>
      <TableChoices form={form} strain={strain} />
      <Text size="sm" c="dimmed">
        A gray number is what the plan uses while the box is empty.
      </Text>
      <SimpleGrid cols={2} style={{ alignItems: 'end' }}>
        <OrderNumber form={form} field="weightFactor" usual={usual.weightFactor} />
        <OrderNumber form={form} field="feedFactor" usual={usual.feedFactor} />
        <OrderNumber form={form} field="wastePercent" usual={usual.wastePercent} />
        {!isGrown && (
          <OrderNumber form={form} field="firstWeekLossPercent" usual={usual.firstWeekPercent} />
        )}
        <OrderNumber
          form={form}
          field="laterLossPercent"
          label={isGrown ? 'Lost before the first egg' : undefined}
          usual={isGrown ? undefined : usual.laterPercent}
        />
        <OrderNumber
          form={form}
          field="orderedBirds"
          label={isOwn ? `${capital(young)} hatched` : undefined}
        />
        <OrderNumber form={form} field="bagKg" usual={bagOfFirst(strain, draft, setting)} />
        {!isOwn && !isGrown && <OrderNumber form={form} field="hatchToArrivalDays" />}
        {isMeat && <OrderNumber form={form} field="targetLiveKg" />}
        {isMeat && <OrderNumber form={form} field="dressingShare" usual={usual.dressingShare} />}
        {isMeat && (
          <OrderNumber form={form} field="movesPerDay" usual={tables.space.penMoves.perDay} />
        )}
        <OrderNumber form={form} field="medicatedWithdrawalDays" />
      </SimpleGrid>
      {!isMeat && (
        <Select
          label={FIELDS.joinsOlderFlock.label}
          value={draft.joinsOlderFlock === undefined ? undefined : String(draft.joinsOlderFlock)}
          onChange={(v) =>
            onChange({ joinsOlderFlock: v === undefined ? undefined : v === 'true' })
          }
          options={[
            { id: 'true', name: 'Yes' },
            { id: 'false', name: 'No' },
          ]}
          none={joinsUnsaid(form)}
        />
      )}
      {!isGrown && (
        <DateField
          label={FIELDS.moveOutDate.label}
          value={draft.moveOutDate}
          error={errors['moveOutDate']}
          onChange={(date) => onChange({ moveOutDate: date })}
        />
      )}
      {!isOwn && (
        <DateField
          label={FIELDS.orderDate.label}
          value={draft.orderDate}
          error={errors['orderDate']}
          onChange={(date) => onChange({ orderDate: date })}
        />
      )}
    </>
  );
}

/** What holds where nobody says whether they join older hens. */
function joinsUnsaid({ draft, setting: { picture, tables } }: FormProps): string {
  const { arrivalDate, purpose = 'layers', coopId, penId } = draft;
  if (arrivalDate === undefined) return 'If there is an earlier batch of layers';
  const places = {
    ...(coopId === undefined ? {} : { coopId }),
    ...(penId === undefined ? {} : { penId }),
  };
  const older = olderFlockOf({ arrivalDate, purpose, ...places }, picture, tables);
  return older
    ? `Yes, as it stands: those of ${older.name}`
    : 'No, as it stands: there are none by then';
}

/** By which tables and rules the batch is planned. */
function TableChoices({ form, strain }: { form: FormProps; strain: Strain }) {
  const { setting, draft, onChange } = form;
  const { tables } = setting;
  const tableId = draft.growthTableId ?? strain.growthTables[0]!;
  const isKeptOtherwise = rowById(tables.growthTables, tableId).atHome !== undefined;
  return (
    <>
      <Select
        label={FIELDS.growthTableId.label}
        value={draft.growthTableId ?? strain.growthTables[0]}
        onChange={(id) => onChange({ growthTableId: id })}
        options={strain.growthTables.map((id) => rowById(tables.growthTables, id))}
      />
      {isKeptOtherwise && (
        <Select
          label={FIELDS.keptAs.label}
          value={draft.keptAs ?? 'small-flock'}
          onChange={(keptAs) => onChange({ keptAs })}
          options={[
            { id: 'small-flock', name: 'A small flock, on pasture or in a coop' },
            { id: 'trial-house', name: 'As in the trial of the growth table' },
          ]}
        />
      )}
      {!isStarted(draft) && <BroodingChoices form={form} strain={strain} />}
    </>
  );
}

/** How they are brooded, and when they go out: nothing of birds that come grown. */
function BroodingChoices({
  form: { setting, draft, onChange },
  strain,
}: {
  form: FormProps;
  strain: Strain;
}) {
  const { tables } = setting;
  const rules = rowById(tables.moveOut, strain.moveOut).rules;
  const schedules = ofSpecies(tables.broodingSchedules, strain.species);
  const spaces = ofSpecies(tables.space.brooder, strain.species);
  return (
    <>
      <Select
        label={FIELDS.broodingScheduleId.label}
        value={draft.broodingScheduleId ?? defaultRow(schedules).id}
        onChange={(id) => onChange({ broodingScheduleId: id })}
        options={schedules}
      />
      <Select
        label={FIELDS.spaceStandardId.label}
        value={draft.spaceStandardId ?? defaultRow(spaces).id}
        onChange={(id) => onChange({ spaceStandardId: id })}
        options={spaces}
      />
      <Select
        label={FIELDS.moveOutRuleId.label}
        value={draft.moveOutRuleId ?? defaultRow(rules).id}
        onChange={(id) => onChange({ moveOutRuleId: id })}
        options={rules}
      />
      <Select
        label={FIELDS.nightSuretyId.label}
        description="Each of the first nights out"
        value={draft.nightSuretyId ?? defaultRow(tables.nights.surety.choices).id}
        onChange={(id) => onChange({ nightSuretyId: id })}
        options={tables.nights.surety.choices}
      />
    </>
  );
}

/** Size of the bag that the first feed is bought in when none is typed. */
function bagOfFirst(strain: Strain, draft: BatchDraft, { picture, tables }: Setting): number {
  const purpose = draft.purpose ?? 'meat';
  const programId = draft.feedProgramId ?? strain.feedProgram[purpose]!;
  const [first] = rowById(tables.feedPrograms, programId).phases;
  const batch = { purpose, strainId: strain.id };
  return bagOf({ ...picture, batch, tables }, first!.id).bagKg;
}
