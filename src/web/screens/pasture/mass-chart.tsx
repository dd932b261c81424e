import '@mantine/charts/styles.css';
import { LineChart } from '@mantine/charts';
import { Stack, Text } from '@mantine/core';
import { useMemo } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { needAheadOf, usableOn } from '../../../../shared/plan/pasture/standing.js';
import { formatValue } from '../../../../shared/units/format.js';
import { fromShown, toShown, type UnitSystem } from '../../../../shared/units/unit.js';
import { useOpener } from '../../explain/explain-panel.js';
import { DRAWN_AT_ONCE, series } from '../../look/series.js';
import { Fact, Facts } from '../../explain/number.js';
import { useDateAxis } from '../../explain/date-axis.js';
import { useSayDate } from '../../explain/say-date.js';

const HEIGHT = 240;

/** Grass above the residuals against what the herds will eat in the days ahead. */
export default function MassChart({
  plan,
  units,
  day,
  onDay,
}: {
  plan: PasturePlan;
  units: UnitSystem;
  day: number;
  onDay: (day: number) => void;
}) {
  const sayDate = useSayDate();
  const { tick, tooltip } = useDateAxis();
  const { reader } = useOpener();
  const ahead = `Needed in the next ${plan.aheadDays.value} days`;
  const data = useMemo(() => {
    const shown = (kg: number): number => Math.round(toShown(kg, 'kg', units));
    const days = plan.paddocks[0]?.massByDay.length ?? 0;
    return Array.from({ length: days }, (_, each) => ({
      day: addDays(plan.from, each),
      'Grass above the residuals': shown(usableOn(plan, each).value),
      [ahead]: shown(needAheadOf(plan, each).value),
    }));
  }, [plan, units, ahead]);
  const date = addDays(plan.from, day);
  return (
    <Stack gap="sm">
      <LineChart
        h={HEIGHT}
        data={data}
        dataKey="day"
        series={[
          { name: 'Grass above the residuals', ...series(3) },
          { name: ahead, ...series(2) },
        ]}
        referenceLines={[{ x: date, color: 'var(--ink-soft)' }]}
        withLegend
        withDots={false}
        valueFormatter={(amount) => formatValue(fromShown(amount, 'kg', units), 'kg', reader)}
        xAxisProps={{ minTickGap: 50, tickFormatter: tick }}
        tooltipProps={tooltip}
        yAxisProps={{ width: 84 }}
        lineChartProps={{
          onClick: ({ activeTooltipIndex }) => {
            const picked = Number(activeTooltipIndex ?? NaN);
            if (Number.isInteger(picked)) onDay(picked);
          },
        }}
        lineProps={DRAWN_AT_ONCE}
      />
      <Text size="sm">
        {sayDate(date)}. Touch the chart for another day, or slide to it under “Grass in each
        paddock”.
      </Text>
      <Facts>
        <Fact of={usableOn(plan, day)} />
        <Fact of={needAheadOf(plan, day)} />
      </Facts>
    </Stack>
  );
}
