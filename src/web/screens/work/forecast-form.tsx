import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import { forecastDayFields } from '../../../../shared/farm/forecast.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import type { SavedFarm } from '../../api/queries.js';
import { useTypeForecast } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { useUnsaved } from '../../fields/unsaved.js';
import { Failure } from '../../shell/states.js';

const FIELDS = forecastDayFields.fields;
const DAYS = 7;

interface Row {
  readonly minC?: number | undefined;
  readonly maxC?: number | undefined;
  readonly rainMm?: number | undefined;
}

/** The forecast of the next days, typed as it is read elsewhere; days left empty stay as usual. */
export function ForecastForm({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const { weather, today } = plan;
  const [start] = useState<readonly Row[]>(() =>
    Array.from({ length: DAYS }, (_, k) =>
      weather.isForecast[k] === 1
        ? { minC: weather.minC[k], maxC: weather.maxC[k], rainMm: weather.rainMm[k] }
        : {},
    ),
  );
  const [rows, setRows] = useState(start);
  const save = useTypeForecast(farm.id);
  useUnsaved(rows !== start && !save.isSuccess);
  const put = (k: number, part: Row): void =>
    setRows(rows.map((row, i) => (i === k ? { ...row, ...part } : row)));
  const days = rows.flatMap(({ minC, maxC, rainMm }, k) =>
    minC === undefined || maxC === undefined
      ? []
      : [{ date: addDays(today, k), minC, maxC, ...(rainMm === undefined ? {} : { rainMm }) }],
  );
  const isHalf = rows.some(({ minC, maxC }) => (minC === undefined) !== (maxC === undefined));
  const isWrong = rows.some(({ minC, maxC, rainMm }) =>
    (
      [
        [minC, FIELDS.minC],
        [maxC, FIELDS.maxC],
        [rainMm, FIELDS.rainMm],
      ] as const
    ).some(
      ([value, { bounds }]) =>
        value !== undefined && 0 < problemsOfNumber('', value, bounds).length,
    ),
  );
  return (
    <Stack gap="xs">
      {rows.map((row, k) => {
        const day = sayDate(addDays(today, k));
        return (
          <Group key={day} gap="xs" align="end" wrap="nowrap">
            <Text size="sm" w={84} pb={10}>
              {day}
            </Text>
            <QuantityInput
              flex={1}
              label={k === 0 ? FIELDS.minC.label : undefined}
              aria-label={`Low on ${day}`}
              field={FIELDS.minC}
              units={farm.units}
              value={row.minC}
              onChange={(minC) => put(k, { minC })}
            />
            <QuantityInput
              flex={1}
              label={k === 0 ? FIELDS.maxC.label : undefined}
              aria-label={`High on ${day}`}
              field={FIELDS.maxC}
              units={farm.units}
              value={row.maxC}
              onChange={(maxC) => put(k, { maxC })}
            />
            <QuantityInput
              flex={1}
              label={k === 0 ? FIELDS.rainMm.label : undefined}
              aria-label={`Rain on ${day}`}
              field={FIELDS.rainMm}
              units={farm.units}
              value={row.rainMm}
              onChange={(rainMm) => put(k, { rainMm })}
            />
          </Group>
        );
      })}
      {isHalf && <Text size="sm">Give both the low and the high of a day, or neither.</Text>}
      <Failure error={save.error} />
      <Group>
        <Button
          variant="light"
          disabled={isWrong || isHalf}
          loading={save.isPending}
          onClick={() => save.mutate(days)}
        >
          Plan with this forecast
        </Button>
      </Group>
    </Stack>
  );
}
