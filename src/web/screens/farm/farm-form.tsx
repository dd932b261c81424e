import {
  Button,
  Fieldset,
  Group,
  NativeSelect,
  NumberInput,
  SegmentedControl,
  SimpleGrid,
  Stack,
  Table,
  Text,
  TextInput,
} from '@mantine/core';
import { useForm } from '@mantine/form';
import { isPlainDate } from '../../../../shared/calendar/plain-date.js';
import type { Farm } from '../../../../shared/farm/farm.js';
import { fromShown, toShown, unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import { ApiError } from '../../api/client.js';
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
  readonly farm: Partial<Farm>;
  readonly submitLabel: string;
  readonly error: Error | null;
  readonly onSubmit: (farm: Farm) => Promise<unknown>;
  readonly onCancel?: () => void;
}

/** Place, units, prices and monthly climate of a farm. */
export function FarmForm({ farm, submitLabel, error, onSubmit, onCancel }: Props) {
  const form = useForm<Partial<Farm>>({ initialValues: farm, validate: problemsOf });
  const { values, setFieldValue, errors } = form;
  const units = values.units ?? 'metric';
  const text = (field: 'name' | 'timeZone' | 'lastFrost' | 'firstFrost') => ({
    value: values[field] ?? '',
    error: errors[field],
    onChange: (event: { currentTarget: { value: string } }) =>
      setFieldValue(field, event.currentTarget.value),
  });
  const submit = form.onSubmit(async (ready) => {
    try {
      await onSubmit(ready as Farm);
    } catch (problem) {
      if (problem instanceof ApiError) form.setErrors(problem.byField);
    }
  });
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
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
              label="Latitude, degrees north"
              bound="latitudeDeg"
              units={units}
              value={values.latitudeDeg}
              error={errors['latitudeDeg']}
              onChange={(v) => setFieldValue('latitudeDeg', v)}
            />
            <QuantityInput
              label="Longitude, degrees east (west is negative)"
              bound="longitudeDeg"
              units={units}
              value={values.longitudeDeg}
              error={errors['longitudeDeg']}
              onChange={(v) => setFieldValue('longitudeDeg', v)}
            />
            <QuantityInput
              label="Elevation"
              bound="elevationM"
              units={units}
              value={values.elevationM}
              error={errors['elevationM']}
              onChange={(v) => setFieldValue('elevationM', v)}
            />
            <NativeSelect
              label="Time zone"
              {...text('timeZone')}
              data={zonesWith(values.timeZone)}
            />
          </SimpleGrid>
        </Fieldset>
        <Fieldset legend="Prices">
          <SimpleGrid cols={{ base: 1, sm: 3 }}>
            <NativeSelect
              label="Currency"
              value={values.currency ?? ''}
              error={errors['currency']}
              onChange={(e) => setFieldValue('currency', e.currentTarget.value)}
              data={Intl.supportedValuesOf('currency')}
            />
            <PriceInput
              label="Electricity, one kWh"
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
            file or fetched weather, once there, takes their place.
          </Text>
          <div className="scroll-x">
            <MonthTable
              units={units}
              min={values.monthlyMinC ?? []}
              max={values.monthlyMaxC ?? []}
              onMin={(v) => setFieldValue('monthlyMinC', v)}
              onMax={(v) => setFieldValue('monthlyMaxC', v)}
            />
          </div>
          <Text c="red.8" size="sm" role="alert">
            {errors['monthlyMinC'] ?? errors['monthlyMaxC']}
          </Text>
          <SimpleGrid cols={{ base: 1, sm: 2 }} mt="sm">
            <TextInput
              label="Usual last spring frost, month-day"
              placeholder="05-20"
              {...text('lastFrost')}
            />
            <TextInput
              label="Usual first autumn frost, month-day"
              placeholder="09-28"
              {...text('firstFrost')}
            />
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
        <Failure error={error} />
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

interface MonthTableProps {
  readonly units: UnitSystem;
  readonly min: readonly number[];
  readonly max: readonly number[];
  readonly onMin: (values: number[]) => void;
  readonly onMax: (values: number[]) => void;
}

function MonthTable({ units, min, max, onMin, onMax }: MonthTableProps) {
  const label = unitLabel('degC', units);
  const cell = (
    month: number,
    name: string,
    values: readonly number[],
    onChange: (values: number[]) => void,
  ) => (
    <NumberInput
      aria-label={`${MONTHS[month]} mean ${name}, ${label}`}
      size="sm"
      w={90}
      hideControls
      decimalScale={1}
      value={
        values[month] === undefined ? '' : Number(toShown(values[month], 'degC', units).toFixed(1))
      }
      onChange={(next) => {
        const all = MONTHS.map((_, k) => values[k]);
        all[month] =
          next === '' || next === '-' ? undefined : fromShown(Number(next), 'degC', units);
        onChange(all as number[]);
      }}
    />
  );
  return (
    <Table withRowBorders={false} verticalSpacing={2} maw={420}>
      <Table.Thead>
        <Table.Tr>
          <Table.Th>Month</Table.Th>
          <Table.Th>Low, {label}</Table.Th>
          <Table.Th>High, {label}</Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {MONTHS.map((name, month) => (
          <Table.Tr key={name}>
            <Table.Th scope="row" fw={400}>
              {name}
            </Table.Th>
            <Table.Td>{cell(month, 'low', min, onMin)}</Table.Td>
            <Table.Td>{cell(month, 'high', max, onMax)}</Table.Td>
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  );
}

/** What the form can see for itself; the service checks everything again. */
function problemsOf(farm: Partial<Farm>): Record<string, string | null> {
  const isFull = (values: readonly (number | undefined)[] | undefined) =>
    values?.length === 12 && values.every((v) => v !== undefined);
  const isMonthDay = (text: string | undefined) =>
    text !== undefined && isPlainDate(`2024-${text}`);
  return {
    name: farm.name?.trim() ? null : 'Give the farm a name.',
    latitudeDeg: farm.latitudeDeg === undefined ? 'Give the latitude, such as 42.9.' : null,
    longitudeDeg: farm.longitudeDeg === undefined ? 'Give the longitude, such as -75.3.' : null,
    elevationM: farm.elevationM === undefined ? 'Give the height above sea level.' : null,
    electricityPricePerKWh: farm.electricityPricePerKWh
      ? null
      : 'Give the price of a kWh, such as 0.19.',
    gasPricePerL: farm.gasPricePerL ? null : 'Give the price, or 0.',
    monthlyMinC: isFull(farm.monthlyMinC) ? null : 'Fill in all twelve lows.',
    monthlyMaxC: isFull(farm.monthlyMaxC) ? null : 'Fill in all twelve highs.',
    lastFrost: isMonthDay(farm.lastFrost) ? null : 'Write month-day, such as 05-20.',
    firstFrost: isMonthDay(farm.firstFrost) ? null : 'Write month-day, such as 09-28.',
    noDeliveryDates: (farm.noDeliveryDates ?? []).every(isPlainDate)
      ? null
      : 'Write each date as year-month-day.',
  };
}
