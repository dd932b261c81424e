import {
  Button,
  Fieldset,
  Group,
  NativeSelect,
  SegmentedControl,
  SimpleGrid,
  Stack,
  Table,
  Text,
  TextInput,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { Fragment, useState, type ReactNode } from 'react';
import { isPlainDate } from '../../../../shared/calendar/plain-date.js';
import type { Farm } from '../../../../shared/farm/farm.js';
import { problemsOfBound } from '../../../../shared/farm/bounds.js';
import { problemsOfMonths } from '../../../../shared/farm/months.js';
import { isPrice } from '../../../../shared/money/money.js';
import type { FieldProblem } from '../../../../shared/problems/field-problem.js';
import { angleText } from '../../../../shared/units/typed.js';
import { unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import {
  labelsFrom,
  messagesByField,
  problemsIn,
  type FormWords,
} from '../../fields/field-words.js';
import {
  draftKey,
  dropDraft,
  keepDraft,
  readDraft,
  UnsavedNote,
  writeDraft,
} from '../../fields/kept-draft.js';
import { LitrePriceInput, PriceInput } from '../../fields/price-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Failure } from '../../shell/states.js';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const LABELS = {
  name: 'Name',
  units: 'Units',
  latitudeDeg: 'Latitude, such as 42.9 N',
  longitudeDeg: 'Longitude, such as 75.3 W',
  elevationM: 'Elevation',
  timeZone: 'Time zone',
  currency: 'Currency',
  electricityPricePerKWh: 'Electricity, one kWh',
  gasPricePerL: 'Propane',
  monthlyMinC: 'Monthly lows',
  monthlyMaxC: 'Monthly highs',
  monthlyRainMm: 'Monthly rain',
  lastFrost: 'Usual last spring frost, month-day',
  firstFrost: 'Usual first autumn frost, month-day',
  noDeliveryDates: 'Holidays without post',
} as const;

/** The words of the form: its labels, and the months of the table. */
const wordsOf = (farm: Partial<Farm>): FormWords => {
  const labelOf = labelsFrom({
    ...LABELS,
    latitudeDeg: 'Latitude',
    longitudeDeg: 'Longitude',
    ...Object.fromEntries(
      MONTHS.flatMap((month, i) => [
        [`monthlyMinC.${i}`, `${month} low`],
        [`monthlyMaxC.${i}`, `${month} high`],
        [`monthlyRainMm.${i}`, `${month} rain`],
      ]),
    ),
  });
  return { labelOf, reader: { units: farm.units ?? 'metric', currency: farm.currency ?? 'USD' } };
};

/** A farm to start from: the browser's own time zone, everything else left for the household. */
export function emptyFarm(): Partial<Farm> {
  return {
    name: '',
    units: navigator.language === 'en-US' ? 'us' : 'metric',
    currency: navigator.language === 'en-US' ? 'USD' : 'EUR',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    elevationM: 0,
    monthlyMinC: [],
    monthlyMaxC: [],
    noDeliveryDates: [],
  };
}

interface Props {
  /** Id of the farm that is changed; undefined for a new one. */
  readonly farmId?: string;
  readonly farm: Partial<Farm>;
  readonly submitLabel: string;
  readonly error: Error | null;
  readonly onSubmit: (farm: Farm) => Promise<unknown>;
  readonly onCancel?: () => void;
}

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
  onCancel,
  onDiscard,
}: Props & { onDiscard: () => void }) {
  const key = draftKey('farm', farmId ?? 'new');
  const [kept] = useState(() => readDraft<Partial<Farm>>(key));
  const form = useForm<Partial<Farm>>({
    initialValues: kept ?? farm,
    onValuesChange: (draft) => keepDraft(key, draft, farm),
    validate: problemsOf,
  });
  const { values, setFieldValue, errors } = form;
  const words = wordsOf(values);
  const units = values.units ?? 'metric';
  const text = (field: 'name' | 'timeZone' | 'lastFrost' | 'firstFrost') => ({
    value: values[field] ?? '',
    error: errors[field],
    onChange: (event: { currentTarget: { value: string } }) =>
      setFieldValue(field, event.currentTarget.value),
  });
  const submit = form.onSubmit(async (ready) => {
    dropDraft(key);
    try {
      await onSubmit(ready as Farm);
    } catch (problem) {
      writeDraft(key, ready);
      form.setErrors(messagesByField(problemsIn(problem), words));
    }
  });
  return (
    <form onSubmit={submit} noValidate>
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
        <Fieldset legend="Farm">
          <SimpleGrid cols={{ base: 1, sm: 2 }}>
            <TextInput label="Name" {...text('name')} />
            <div>
              <Text size="sm" fw={500} mb={4} id="units-label">
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
              label={LABELS.latitudeDeg}
              bound="latitudeDeg"
              units={units}
              value={values.latitudeDeg}
              error={errors['latitudeDeg']}
              onChange={(v) => setFieldValue('latitudeDeg', v)}
            />
            <QuantityInput
              label={LABELS.longitudeDeg}
              bound="longitudeDeg"
              units={units}
              value={values.longitudeDeg}
              error={errors['longitudeDeg']}
              onChange={(v) => setFieldValue('longitudeDeg', v)}
            />
            <QuantityInput
              label={LABELS.elevationM}
              bound="elevationM"
              units={units}
              value={values.elevationM}
              error={errors['elevationM']}
              onChange={(v) => setFieldValue('elevationM', v)}
            />
            <NativeSelect
              label={LABELS.timeZone}
              {...text('timeZone')}
              error={errors['timeZone'] ?? zoneDoubt(values)}
              data={zonesWith(values.timeZone)}
            />
          </SimpleGrid>
        </Fieldset>
        <Fieldset legend="Prices">
          <SimpleGrid cols={{ base: 1, sm: 3 }}>
            <NativeSelect
              label={LABELS.currency}
              value={values.currency ?? ''}
              error={errors['currency']}
              onChange={(e) => setFieldValue('currency', e.currentTarget.value)}
              data={Intl.supportedValuesOf('currency')}
            />
            <PriceInput
              label={LABELS.electricityPricePerKWh}
              currency={values.currency ?? ''}
              value={values.electricityPricePerKWh}
              error={errors['electricityPricePerKWh']}
              onChange={(v) => setFieldValue('electricityPricePerKWh', v)}
            />
            <LitrePriceInput
              units={units}
              label={`Propane, one ${units === 'us' ? 'gallon' : 'litre'} (0 when unused)`}
              currency={values.currency ?? ''}
              value={values.gasPricePerL}
              error={errors['gasPricePerL']}
              onChange={(v) => setFieldValue('gasPricePerL', v)}
            />
          </SimpleGrid>
        </Fieldset>
        <Fieldset legend="Monthly climate">
          <Text size="sm" mb="xs">
            Mean daily low and high of each month, from your weather service’s climate page. A daily
            file or fetched weather, once there, takes their place. Rain is only needed for grass:
            leave it out if you have none.
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
          <Text c="var(--mantine-color-error)" size="sm" role="alert">
            {[errors['monthlyMinC'], errors['monthlyMaxC'], errors['monthlyRainMm']]
              .filter(Boolean)
              .join(' ')}
          </Text>
          <SimpleGrid cols={{ base: 1, sm: 2 }} mt="sm">
            <TextInput label={LABELS.lastFrost} placeholder="05-20" {...text('lastFrost')} />
            <TextInput label={LABELS.firstFrost} placeholder="09-28" {...text('firstFrost')} />
          </SimpleGrid>
          <TextInput
            mt="sm"
            label="Holidays without post, year-month-day, separated by commas"
            value={(values.noDeliveryDates ?? []).join(', ')}
            error={errors['noDeliveryDates']}
            onChange={(e) =>
              setFieldValue(
                'noDeliveryDates',
                e.currentTarget.value === ''
                  ? []
                  : e.currentTarget.value.split(',').map((d) => d.trim()),
              )
            }
          />
        </Fieldset>
        <Failure error={error} words={words} />
        <Group>
          <Button type="submit" loading={form.submitting}>
            {submitLabel}
          </Button>
          {onCancel && (
            <Button variant="subtle" onClick={onCancel}>
              Back
            </Button>
          )}
        </Group>
      </Stack>
    </form>
  );
}

/** All zones the browser knows, with the one in use, which may be an alias such as UTC. */
const zonesWith = (zone: string | undefined): string[] => [
  ...new Set([...(zone === undefined ? [] : [zone]), ...Intl.supportedValuesOf('timeZone')]),
];

/** Hours by which the clock of a zone may differ from the sun before it looks like a mistake. */
const MOST_HOURS_FROM_SUN = 4;

/** A doubt about the time zone when it cannot be that of the longitude. */
function zoneDoubt({ timeZone, longitudeDeg }: Partial<Farm>): string | undefined {
  if (timeZone === undefined || longitudeDeg === undefined || !Number.isFinite(longitudeDeg))
    return;
  const sun = longitudeDeg / 15;
  const apart = Math.abs(hoursFromUtc(timeZone) - sun);
  if (Math.min(apart, 24 - apart) <= MOST_HOURS_FROM_SUN) return undefined;
  return `${timeZone} is far from ${angleText(longitudeDeg, 'longitude')}: check both.`;
}

/** Hours ahead of UTC in January of this century; summer time does not matter here. */
function hoursFromUtc(timeZone: string): number {
  const at = new Date(Date.UTC(2025, 0, 15, 12));
  const parts = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset' });
  const name = parts.formatToParts(at).find((p) => p.type === 'timeZoneName')?.value ?? 'GMT';
  const found = /([+-])(\d+):(\d+)/.exec(name);
  if (!found) return 0;
  return (found[1] === '-' ? -1 : 1) * (Number(found[2]) + Number(found[3]) / 60);
}

interface MonthTableProps {
  readonly words: FormWords;
  readonly units: UnitSystem;
  readonly errors: Readonly<Record<string, ReactNode>>;
  readonly min: readonly (number | undefined)[];
  readonly max: readonly (number | undefined)[];
  readonly onMin: (values: number[]) => void;
  readonly onMax: (values: number[]) => void;
  readonly rain: readonly (number | undefined)[];
  readonly onRain: (values: (number | undefined)[]) => void;
}

/** Lows and highs by month; what is wrong with a month stands right below its two boxes. */
function MonthTable({
  words,
  units,
  errors,
  min,
  max,
  rain,
  onMin,
  onMax,
  onRain,
}: MonthTableProps) {
  const label = unitLabel('degC', units);
  const found = messagesByField(problemsOfTable(min, max), words);
  const cell = (
    month: number,
    name: string,
    field: string,
    values: readonly (number | undefined)[],
    onChange: (values: number[]) => void,
  ) => (
    <QuantityInput
      aria-label={`${MONTHS[month]} mean ${name}, ${label}`}
      size="sm"
      w={104}
      bound="airC"
      units={units}
      messageId={`month-${month}`}
      error={found[`${field}.${month}`] ?? errors[`${field}.${month}`]}
      value={values[month]}
      onChange={(next) => {
        const all = MONTHS.map((_, k) => values[k]);
        all[month] = next;
        onChange(all as number[]);
      }}
    />
  );
  const message = (month: number) =>
    ['monthlyMinC', 'monthlyMaxC', 'monthlyRainMm'].flatMap((field) => {
      const at = `${field}.${month}`;
      return found[at] ?? errors[at] ?? [];
    });
  return (
    <Table withRowBorders={false} verticalSpacing={2} maw={540}>
      <Table.Thead>
        <Table.Tr>
          <Table.Th>Month</Table.Th>
          <Table.Th>Low, {label}</Table.Th>
          <Table.Th>High, {label}</Table.Th>
          <Table.Th>Rain, {unitLabel('rainMm', units)}</Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {MONTHS.map((name, month) => (
          <Fragment key={name}>
            <Table.Tr>
              <Table.Th scope="row" fw={400}>
                {name}
              </Table.Th>
              <Table.Td>{cell(month, 'low', 'monthlyMinC', min, onMin)}</Table.Td>
              <Table.Td>{cell(month, 'high', 'monthlyMaxC', max, onMax)}</Table.Td>
              <Table.Td>
                <QuantityInput
                  aria-label={`${name} rain, ${unitLabel('rainMm', units)}`}
                  size="sm"
                  w={96}
                  bound="rainMm"
                  units={units}
                  messageId={`month-${month}`}
                  error={errors[`monthlyRainMm.${month}`]}
                  value={rain[month]}
                  onChange={(next) => onRain(MONTHS.map((_, k) => (k === month ? next : rain[k])))}
                />
              </Table.Td>
            </Table.Tr>
            {0 < message(month).length && (
              <Table.Tr>
                <Table.Td id={`month-${month}`} colSpan={4}>
                  {message(month).map((text, k) => (
                    <Text key={k} size="sm" c="var(--mantine-color-error)">
                      {text}
                    </Text>
                  ))}
                </Table.Td>
              </Table.Tr>
            )}
          </Fragment>
        ))}
      </Table.Tbody>
    </Table>
  );
}

/** What is wrong with the months that are filled in. */
const problemsOfTable = (
  min: readonly (number | undefined)[],
  max: readonly (number | undefined)[],
): FieldProblem[] => [
  ...MONTHS.flatMap((_, k) => [
    ...problemsOfBound(`monthlyMinC.${k}`, min[k], 'airC'),
    ...problemsOfBound(`monthlyMaxC.${k}`, max[k], 'airC'),
  ]),
  ...problemsOfMonths(min, max),
];

/** What the form can see for itself; the service checks everything again. */
function problemsOf(farm: Partial<Farm>): Record<string, string | null> {
  const { monthlyMinC: min = [], monthlyMaxC: max = [] } = farm;
  const gaps = (values: readonly (number | undefined)[]) =>
    MONTHS.filter((_, k) => values[k] === undefined);
  const isMonthDay = (text: string | undefined) =>
    text !== undefined && isPlainDate(`2024-${text}`);
  const missing: Record<string, string | null> = {
    name: farm.name?.trim() ? null : 'Give the farm a name.',
    latitudeDeg: farm.latitudeDeg === undefined ? 'Give the latitude, such as 42.9 N.' : null,
    longitudeDeg: farm.longitudeDeg === undefined ? 'Give the longitude, such as 75.3 W.' : null,
    elevationM: farm.elevationM === undefined ? 'Give the height above sea level.' : null,
    electricityPricePerKWh: isPrice(farm.electricityPricePerKWh)
      ? null
      : 'Give the price of a kWh, such as 0.19.',
    gasPricePerL: isPrice(farm.gasPricePerL) ? null : 'Give the price, or 0.',
    monthlyMinC: gapText('lows', gaps(min)),
    monthlyMaxC: gapText('highs', gaps(max)),
    // All twelve or none: rain of some months only says nothing of the rest.
    monthlyRainMm:
      farm.monthlyRainMm === undefined ? null : gapText('rain', gaps(farm.monthlyRainMm)),
    lastFrost: isMonthDay(farm.lastFrost) ? null : 'Write month-day, such as 05-20.',
    firstFrost: isMonthDay(farm.firstFrost) ? null : 'Write month-day, such as 09-28.',
    noDeliveryDates: (farm.noDeliveryDates ?? []).every(isPlainDate)
      ? null
      : 'Write each date as year-month-day.',
  };
  return {
    ...missing,
    ...messagesByField(
      [
        ...problemsOfBound('latitudeDeg', farm.latitudeDeg, 'latitudeDeg'),
        ...problemsOfBound('longitudeDeg', farm.longitudeDeg, 'longitudeDeg'),
        ...problemsOfBound('elevationM', farm.elevationM, 'elevationM'),
        ...problemsOfTable(min, max),
        ...(farm.monthlyRainMm ?? []).flatMap((mm, k) =>
          problemsOfBound(`monthlyRainMm.${k}`, mm, 'rainMm'),
        ),
      ],
      wordsOf(farm),
    ),
  };
}

function gapText(what: string, months: readonly string[]): string | null {
  if (months.length === 0) return null;
  return months.length === MONTHS.length
    ? `Fill in all twelve ${what}.`
    : `Fill in the ${what} of ${months.join(', ')}.`;
}
