import {
  Button,
  Fieldset,
  Group,
  NativeSelect,
  SegmentedControl,
  SimpleGrid,
  Stack,
  Text,
  TextInput,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { useRef, useState } from 'react';
import { farmFields, type Farm } from '../../../../shared/farm/farm.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { useCountries, useTables } from '../../api/queries.js';
import { MarkAssumed } from '../../fields/assumed.js';
import { useErrorsInView } from '../../fields/errors-in-view.js';
import { messagesByField, problemsIn } from '../../fields/field-words.js';
import {
  draftKey,
  dropDraft,
  keepDraft,
  readDraft,
  UnsavedNote,
  writeDraft,
} from '../../fields/kept-draft.js';
import { UnitPriceInput, PriceInput } from '../../fields/price-input.js';
import { DateList } from '../../fields/date-list.js';
import { MonthDayField } from '../../fields/month-day-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { Failure } from '../../shell/states.js';
import { wordsOf } from './farm-labels.js';
import { problemsOf } from './farm-problems.js';
import { MonthTable } from './month-table.js';
import { zoneDoubt } from './time-zone-doubt.js';
import { YearLimitFields } from './year-limit-fields.js';

const FIELDS = farmFields.fields;

interface Props {
  readonly farmId: string;
  readonly farm: Partial<Farm>;
  readonly submitLabel: string;
  readonly error: Error | null;
  readonly onSubmit: (farm: Farm) => Promise<unknown>;
}

const FROST_DATES = [
  { id: 'usual', name: 'usual: so in half of the years' },
  { id: 'safe', name: 'safe: only one year in ten goes past them' },
] as const;

const messageOf = (error: unknown): string | undefined =>
  typeof error === 'string' ? error : undefined;

/** Place, units, prices and monthly climate of a farm. */
export function FarmForm(props: Props) {
  const [discards, setDiscards] = useState(0);
  return <Fields key={discards} {...props} onDiscard={() => setDiscards(discards + 1)} />;
}

function Fields({
  farmId,
  farm,
  submitLabel,
  error,
  onSubmit,
  onDiscard,
}: Props & { onDiscard: () => void }) {
  const key = draftKey('farm', farmId);
  const soils = useTables();
  const countries = useCountries();
  const [kept] = useState(() => readDraft<Partial<Farm>>(key));
  const form = useForm<Partial<Farm>>({
    initialValues: kept ?? farm,
    onValuesChange: (draft) => keepDraft(key, draft, farm),
    validate: problemsOf,
  });
  const { values, setFieldValue, errors } = form;
  const regions = countries.data?.find(({ id }) => id === values.country)?.regions ?? [];
  const words = wordsOf(values);
  const units = values.units ?? 'metric';
  const text = (field: 'name' | 'timeZone') => ({
    value: values[field] ?? '',
    error: errors[field],
    onChange: (event: { currentTarget: { value: string } }) =>
      setFieldValue(field, event.currentTarget.value),
  });
  const element = useRef<HTMLFormElement>(null);
  const [refusals, setRefusals] = useState(0);
  useErrorsInView(element, refusals);
  const refuse = () => setRefusals((before) => before + 1);
  const submit = form.onSubmit(async (ready) => {
    dropDraft(key);
    try {
      await onSubmit(ready as Farm);
    } catch (problem) {
      writeDraft(key, ready);
      form.setErrors(messagesByField(problemsIn(problem), words));
      refuse();
    }
  }, refuse);
  return (
    <form ref={element} onSubmit={submit} noValidate>
      <Stack>
        {JSON.stringify(values) !== JSON.stringify(farm) && (
          <UnsavedNote
            isRestored={kept !== undefined}
            onDiscard={() => {
              dropDraft(key);
              onDiscard();
            }}
          />
        )}
        <MarkAssumed start={farm} draft={values} words={words}>
          <Fieldset legend="Farm">
            <SimpleGrid cols={{ base: 1, sm: 2 }}>
              <TextInput label={FIELDS.name.label} {...text('name')} />
              <div>
                <Text fw={500} id="units-label">
                  Units
                </Text>
                <SegmentedControl
                  aria-labelledby="units-label"
                  fullWidth
                  value={units}
                  onChange={(next) => setFieldValue('units', next as UnitSystem)}
                  data={[
                    { value: 'metric', label: 'Metric' },
                    { value: 'us', label: 'US customary' },
                  ]}
                />
              </div>
              <QuantityInput
                label={`${FIELDS.latitudeDeg.label}, such as 42.9 N`}
                field={FIELDS.latitudeDeg}
                units={units}
                value={values.latitudeDeg}
                error={errors['latitudeDeg']}
                onChange={(v) => setFieldValue('latitudeDeg', v)}
              />
              <QuantityInput
                label={`${FIELDS.longitudeDeg.label}, such as 75.3 W`}
                field={FIELDS.longitudeDeg}
                units={units}
                value={values.longitudeDeg}
                error={errors['longitudeDeg']}
                onChange={(v) => setFieldValue('longitudeDeg', v)}
              />
              <QuantityInput
                field={FIELDS.elevationM}
                units={units}
                value={values.elevationM}
                error={errors['elevationM']}
                onChange={(v) => setFieldValue('elevationM', v)}
              />
              <NativeSelect
                label={FIELDS.timeZone.label}
                {...text('timeZone')}
                error={errors['timeZone'] ?? zoneDoubt(values)}
                data={zonesWith(values.timeZone)}
              />
            </SimpleGrid>
          </Fieldset>
          <Fieldset legend="Prices">
            <SimpleGrid cols={{ base: 1, sm: 3 }}>
              <NativeSelect
                label={FIELDS.currency.label}
                value={values.currency ?? ''}
                error={errors['currency']}
                onChange={(e) => setFieldValue('currency', e.currentTarget.value)}
                data={Intl.supportedValuesOf('currency')}
              />
              <PriceInput
                label={FIELDS.electricityPricePerKWh.label}
                currency={values.currency ?? ''}
                value={values.electricityPricePerKWh}
                error={errors['electricityPricePerKWh']}
                onChange={(v) => setFieldValue('electricityPricePerKWh', v)}
              />
              <UnitPriceInput
                of="L"
                units={units}
                label={`Propane, one ${units === 'us' ? 'gallon' : 'liter'} (0 when unused)`}
                currency={values.currency ?? ''}
                value={values.gasPricePerL}
                error={errors['gasPricePerL']}
                onChange={(v) => setFieldValue('gasPricePerL', v)}
              />
            </SimpleGrid>
          </Fieldset>
          <Fieldset legend="Monthly climate">
            <Text size="sm" mb="xs">
              Average daily low and high of each month, from your weather service’s climate page:
              typed, or a column or table pasted into its first box. A daily file or fetched
              weather, once there, takes their place. Rain decides how the grass grows and when the
              ground is dry enough to work: without it every day counts as dry.
            </Text>
            <div className="scroll-x">
              <MonthTable
                words={words}
                units={units}
                errors={errors}
                min={values.monthlyMinC ?? []}
                max={values.monthlyMaxC ?? []}
                onMin={(v) => setFieldValue('monthlyMinC', v)}
                onMax={(v) => setFieldValue('monthlyMaxC', v)}
                rain={values.monthlyRainMm ?? []}
                onRain={(v) =>
                  setFieldValue(
                    'monthlyRainMm',
                    v.every((mm) => mm === undefined) ? undefined : (v as number[]),
                  )
                }
              />
            </div>
            <Text c="stop" size="sm" role="alert">
              {[errors['monthlyMinC'], errors['monthlyMaxC'], errors['monthlyRainMm']]
                .filter(Boolean)
                .join(' ')}
            </Text>
            <SimpleGrid cols={{ base: 1, sm: 2 }} mt="sm">
              {(['lastFrost', 'firstFrost'] as const).map((name) => (
                <MonthDayField
                  key={name}
                  label={FIELDS[name].label}
                  value={values[name]}
                  error={messageOf(errors[name])}
                  onChange={(value) => setFieldValue(name, value)}
                />
              ))}
              <Select
                label={FIELDS.frostDatesAre.label}
                description="Move-out nights are set by them where only monthly averages are known"
                value={values.frostDatesAre ?? 'usual'}
                error={messageOf(errors['frostDatesAre'])}
                options={FROST_DATES}
                onChange={(choice) => setFieldValue('frostDatesAre', choice)}
              />
              <Select
                label={FIELDS.gardenSoilId.label}
                description="Says when beds and fence lines are dry enough to work"
                value={values.gardenSoilId}
                error={errors['gardenSoilId']}
                options={soils.data?.soils ?? []}
                none="not known: taken as loam"
                onChange={(id) => setFieldValue('gardenSoilId', id)}
              />
            </SimpleGrid>
            <SimpleGrid cols={{ base: 1, sm: 2 }} mt="sm">
              <Select
                label={FIELDS.country.label}
                description="Its public holidays are days without post"
                value={values.country}
                error={messageOf(errors['country'])}
                options={countries.data ?? []}
                none="not said"
                onChange={(id) => {
                  setFieldValue('country', id);
                  setFieldValue('region', undefined);
                }}
              />
              {0 < regions.length && (
                <Select
                  label={FIELDS.region.label}
                  value={values.region}
                  error={messageOf(errors['region'])}
                  options={regions}
                  none="not said"
                  onChange={(id) => setFieldValue('region', id)}
                />
              )}
            </SimpleGrid>
            <DateList
              label={FIELDS.noDeliveryDates.label}
              dates={values.noDeliveryDates ?? []}
              errorAt={(k) =>
                messageOf(errors[k === undefined ? 'noDeliveryDates' : `noDeliveryDates.${k}`])
              }
              onChange={(dates) => setFieldValue('noDeliveryDates', dates)}
            />
          </Fieldset>
          <YearLimitFields
            units={units}
            limits={values.yearLimits}
            errorOf={(name) => messageOf(errors[`yearLimits.${name}`])}
            onChange={(limits) => setFieldValue('yearLimits', limits)}
          />
        </MarkAssumed>
        <Failure error={error} words={words} />
        <Group>
          <Button type="submit" loading={form.submitting}>
            {submitLabel}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

/** All zones the browser knows, with the one in use, which may be an alias such as UTC. */
const zonesWith = (zone: string | undefined): string[] => [
  ...new Set([...(zone === undefined ? [] : [zone]), ...Intl.supportedValuesOf('timeZone')]),
];
