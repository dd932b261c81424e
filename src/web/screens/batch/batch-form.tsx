import {
  Accordion,
  SegmentedControl,
  SimpleGrid,
  Slider,
  Stack,
  Text,
  TextInput,
} from '@mantine/core';
import type { ReactNode } from 'react';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import { batchFields } from '../../../../shared/farm/batch.js';
import type { FacilityKind } from '../../../../shared/farm/facility.js';
import type { NumberField } from '../../../../shared/farm/field.js';
import { capital } from '../../../../shared/plan/bird-words.js';
import { bagOf } from '../../../../shared/plan/prices.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { defaultRow, ofSpecies, rowById } from '../../../../shared/tables/tables.js';
import type { Purpose, Sex } from '../../../../shared/farm/batch.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { usualHomeSpace } from '../../../../shared/plan/home-space.js';
import { usualFactors } from '../../../../shared/plan/how-they-grow.js';
import { Select } from '../../fields/select.js';
import { EggFields } from './egg-fields.js';
import { WANTED, WEEKDAY_CHOICES } from './batch-labels.js';
import { NO_EGGS, OwnEggs } from './own-eggs.js';
import { BatchPrices } from './batch-prices.js';
import type { BatchDraft, Setting } from './use-plan.js';

const FIELDS = batchFields.fields;

/** Fields of a batch that hold a number. */
type NumberName = {
  [K in keyof typeof FIELDS]: (typeof FIELDS)[K] extends NumberField ? K : never;
}[keyof typeof FIELDS];

const SEXES: Record<Purpose, readonly Sex[]> = {
  meat: ['straight-run', 'cockerels', 'pullets'],
  layers: ['pullets', 'straight-run'],
};

/** The sexes to choose from, as they are called of that kind of bird; eggs hatch both. */
function sexesOf(
  purpose: Purpose,
  isOwn: boolean,
  { male, female } = { male: 'cockerel', female: 'pullet' },
): { id: Sex; name: string }[] {
  const names: Record<Sex, string> = {
    'straight-run': 'Straight run (both sexes)',
    cockerels: `${capital(male)}s`,
    pullets: `${capital(female)}s`,
  };
  return SEXES[purpose]
    .filter((sex) => !isOwn || sex === 'straight-run')
    .map((id) => ({ id, name: names[id] }));
}

/** Days either side of the start that the slider reaches. */
const SLIDE_DAYS = 42;

interface Props {
  readonly setting: Setting;
  readonly draft: BatchDraft;
  readonly errors: Readonly<Record<string, string>>;
  /** Arrival date around which the slider slides. */
  readonly slideFrom: string;
  readonly onChange: (more: BatchDraft) => void;
}

export function BatchForm({ setting, draft, errors, slideFrom, onChange }: Props) {
  const { farm, tables } = setting;
  const purpose = draft.purpose ?? 'meat';
  const strains = tables.strains.filter((s) => s.purposes.includes(purpose));
  const strain = strains.find((s) => s.id === draft.strainId);
  const usual = strain && usualOf(strain, draft, tables);
  const species = strain && rowById(tables.hatching.species, strain.species);
  const isOwn = (draft.origin ?? 'hatchery') !== 'hatchery';
  /** A number of the order; what is used when it is left out stands in the empty box. */
  const quantity = (field: NumberName, usual?: number, label: string = FIELDS[field].label) => (
    <QuantityInput
      label={label}
      field={FIELDS[field]}
      units={farm.units}
      value={draft[field]}
      error={errors[field]}
      placeholder={typedText(usual, FIELDS[field], farm.units)}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
  const place = (
    field: 'brooderId' | 'penId' | 'coopId' | 'freezerId' | 'feedStoreId',
    kind: FacilityKind,
  ) => (
    <Select
      label={FIELDS[field].label}
      value={draft[field]}
      error={errors[field]}
      onChange={(id) => onChange({ [field]: id })}
      options={setting.picture.facilities.filter((f) => f.kind === kind)}
      none="None yet"
    />
  );
  return (
    <Stack gap="sm">
      <SegmentedControl
        aria-label="Purpose"
        fullWidth
        size="md"
        value={purpose}
        onChange={(next) => onChange(forPurpose(next as Purpose, tables.strains, draft.name))}
        data={[
          { value: 'meat', label: 'For meat' },
          { value: 'layers', label: 'For eggs' },
        ]}
      />
      <TextInput
        label={FIELDS.name.label}
        value={draft.name ?? ''}
        error={errors['name']}
        onChange={(e) => onChange({ name: e.currentTarget.value })}
      />
      <Select
        label={FIELDS.strainId.label}
        description={strain?.description}
        value={draft.strainId}
        error={errors['strainId']}
        onChange={(id) =>
          onChange({
            strainId: id,
            growthTableId: undefined,
            moveOutRuleId: undefined,
            broodingScheduleId: undefined,
            spaceStandardId: undefined,
            leaveAgeDays: undefined,
            ...NO_HENS,
          })
        }
        options={strains}
      />
      <Select
        label={FIELDS.sex.label}
        value={draft.sex}
        error={errors['sex']}
        onChange={(sex) => onChange({ sex: sex ?? 'straight-run' })}
        options={sexesOf(purpose, isOwn, species)}
      />
      <OwnEggs setting={setting} draft={draft} errors={errors} onChange={onChange} />
      {quantity('wantedBirds', undefined, WANTED[purpose])}
      <DateField
        label={isOwn ? 'Hatch' : FIELDS.arrivalDate.label}
        value={draft.arrivalDate}
        error={errors['arrivalDate']}
        onChange={(date) => onChange({ arrivalDate: date })}
      />
      <ArrivalSlider
        from={slideFrom}
        value={draft.arrivalDate}
        onChange={(arrivalDate) => onChange({ arrivalDate })}
      />
      {purpose === 'meat' && quantity('leaveAgeDays', strain?.leave.ageDays)}
      {purpose === 'meat' && (
        <Select
          label={FIELDS.processingWeekday.label}
          value={draft.processingWeekday === undefined ? undefined : `${draft.processingWeekday}`}
          error={errors['processingWeekday']}
          onChange={(day) =>
            onChange({ processingWeekday: day === undefined ? undefined : Number(day) })
          }
          options={WEEKDAY_CHOICES}
          none="Any day"
        />
      )}
      <Accordion variant="contained" multiple>
        <Panel title="Housing">
          {draft.origin !== 'hen' && place('brooderId', 'brooder')}
          {purpose === 'meat' && place('penId', 'field-pen')}
          {place('coopId', 'coop')}
          {(purpose === 'meat' || draft.sex === 'straight-run') && place('freezerId', 'freezer')}
          {place('feedStoreId', 'feed-store')}
        </Panel>
        <Panel title="Prices">
          {strain && (
            <BatchPrices setting={setting} draft={draft} strain={strain} onChange={onChange} />
          )}
        </Panel>
        {purpose === 'layers' && strain && (
          <Panel title="Eggs">
            <EggFields
              setting={setting}
              draft={draft}
              errors={errors}
              strain={strain}
              onChange={onChange}
            />
          </Panel>
        )}
        <Panel title="More choices">
          {strain && (
            <Choices setting={setting} draft={draft} strain={strain} onChange={onChange} />
          )}
          <Text size="sm" c="dimmed">
            A gray number is what the plan uses while the box is empty.
          </Text>
          <SimpleGrid cols={2}>
            {quantity('weightFactor', usual?.weightFactor)}
            {quantity('feedFactor', usual?.feedFactor)}
            {quantity('wastePercent', usual?.wastePercent)}
            {quantity('firstWeekLossPercent', usual?.firstWeekPercent)}
            {quantity('laterLossPercent', usual?.laterPercent)}
            {quantity(
              'orderedBirds',
              undefined,
              isOwn ? `${capital(species?.young ?? 'chicks')} hatched` : undefined,
            )}
            {quantity('bagKg', strain && bagOfFirst(strain, draft, setting))}
            {!isOwn && quantity('hatchToArrivalDays')}
            {purpose === 'meat' && quantity('targetLiveKg')}
            {purpose === 'meat' && quantity('dressingShare', usual?.dressingShare)}
            {purpose === 'meat' && quantity('processingHelpers')}
            {purpose === 'meat' && quantity('movesPerDay', tables.space.penMoves.perDay)}
            {quantity('homeFloorM2', usual?.homeFloorM2)}
            {quantity('medicatedWithdrawalDays')}
          </SimpleGrid>
          {purpose === 'layers' && (
            <Select
              label={FIELDS.joinsOlderFlock.label}
              value={
                draft.joinsOlderFlock === undefined ? undefined : String(draft.joinsOlderFlock)
              }
              onChange={(v) =>
                onChange({ joinsOlderFlock: v === undefined ? undefined : v === 'true' })
              }
              options={[
                { id: 'true', name: 'Yes' },
                { id: 'false', name: 'No' },
              ]}
              none="If there is an earlier batch of layers"
            />
          )}
          <DateField
            label={FIELDS.moveOutDate.label}
            value={draft.moveOutDate}
            error={errors['moveOutDate']}
            onChange={(date) => onChange({ moveOutDate: date })}
          />
          {!isOwn && (
            <DateField
              label={FIELDS.orderDate.label}
              value={draft.orderDate}
              error={errors['orderDate']}
              onChange={(date) => onChange({ orderDate: date })}
            />
          )}
        </Panel>
      </Accordion>
    </Stack>
  );
}

function Panel({ title, children }: { title: string; children: ReactNode }) {
  return (
    <Accordion.Item value={title}>
      <Accordion.Control>{title}</Accordion.Control>
      <Accordion.Panel>
        <Stack gap="sm">{children}</Stack>
      </Accordion.Panel>
    </Accordion.Item>
  );
}

function ArrivalSlider({
  from,
  value,
  onChange,
}: {
  from: string;
  value: string | undefined;
  onChange: (date: string) => void;
}) {
  const sayDate = useSayDate();
  const offset = value === undefined ? 0 : daysBetween(from, value);
  return (
    <div>
      <Text size="sm">Move the arrival</Text>
      <Slider
        min={-SLIDE_DAYS}
        max={SLIDE_DAYS}
        value={Math.max(-SLIDE_DAYS, Math.min(SLIDE_DAYS, offset))}
        onChange={(days) => onChange(addDays(from, days))}
        label={(days) => sayDate(addDays(from, days))}
        thumbLabel="Arrival date"
        thumbSize={26}
        marks={[{ value: 0 }]}
      />
    </div>
  );
}

function Choices({
  setting,
  draft,
  strain,
  onChange,
}: {
  setting: Setting;
  draft: BatchDraft;
  strain: Strain;
  onChange: Props['onChange'];
}) {
  const { tables } = setting;
  const rules = rowById(tables.moveOut, strain.moveOut).rules;
  const schedules = ofSpecies(tables.broodingSchedules, strain.species);
  const spaces = ofSpecies(tables.space.brooder, strain.species);
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
      {draft.purpose === 'meat' && (
        <Select
          label={FIELDS.processing.label}
          value={draft.processing ?? 'home'}
          onChange={(v) => onChange({ processing: v })}
          options={[
            { id: 'home', name: 'At home' },
            { id: 'hired', name: 'By a hired processor' },
          ]}
        />
      )}
    </>
  );
}

/** Choices that belong to a strain of hens. */
const NO_HENS = { layCurveId: undefined, feedProgramId: undefined } as const;

/** Name of a batch until the household gives it one of its own. */
const FIRST_NAMES: Record<Purpose, string> = { meat: 'Meat birds', layers: 'Layers' };

/**
 * What changes with the purpose: a strain bred for it, the name while it is still the first one, and
 * nothing that no longer applies.
 */
export function forPurpose(
  purpose: Purpose,
  strains: readonly Strain[],
  name: string | undefined,
): BatchDraft {
  const fitting = strains.filter((s) => s.purposes.includes(purpose));
  const strain = fitting.find((s) => s.defaultFor?.includes(purpose)) ?? fitting[0]!;
  const isUntouched = !name?.trim() || Object.values(FIRST_NAMES).includes(name);
  return {
    purpose,
    ...(isUntouched ? { name: FIRST_NAMES[purpose] } : {}),
    strainId: strain.id,
    sex: SEXES[purpose][0]!,
    origin: undefined,
    hatchToArrivalDays: 1,
    ...NO_EGGS,
    growthTableId: undefined,
    moveOutRuleId: undefined,
    leaveAgeDays: undefined,
    targetLiveKg: undefined,
    ...NO_HENS,
    processingWeekday: undefined,
    processingHelpers: undefined,
  };
}

/** Size of the bag that the first feed is bought in when none is typed. */
function bagOfFirst(strain: Strain, draft: BatchDraft, { picture, tables }: Setting): number {
  const purpose = draft.purpose ?? 'meat';
  const programId = draft.feedProgramId ?? strain.feedProgram[purpose]!;
  const [first] = rowById(tables.feedPrograms, programId).phases;
  const batch = { purpose, strainId: strain.id };
  return bagOf({ batch, products: picture.products, tables }, first!.id).bagKg;
}

/** What the plan uses for a factor that is left out. */
function usualOf(strain: Strain, draft: BatchDraft, tables: Setting['tables']) {
  const table = rowById(tables.growthTables, draft.growthTableId ?? strain.growthTables[0]!);
  const factors = usualFactors(draft, table);
  const losses = rowById(
    tables.losses,
    (draft.purpose === 'layers' && strain.layLosses) || strain.losses,
  );
  return {
    weightFactor: factors.weight,
    feedFactor: factors.feed,
    wastePercent: strain.waste.percent,
    firstWeekPercent: losses.firstWeekPercent,
    laterPercent: losses.laterPercent,
    dressingShare:
      strain.dressing === undefined
        ? undefined
        : rowById(tables.processing.dressing, strain.dressing).share,
    homeFloorM2: usualHomeSpace(draft.purpose ?? 'meat', strain.species, tables.space).floorM2,
  };
}
