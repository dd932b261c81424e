import '@mantine/charts/styles.css';
import './mass-chart.css';
import { CompositeChart } from '@mantine/charts';
import { Stack, Text } from '@mantine/core';
import { useMemo } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { hayAheadOf, hayMadeOn } from '../../../../shared/plan/pasture/hay-beside-grass.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { needAheadOf, usableOn } from '../../../../shared/plan/pasture/standing.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { fromShown, toShown, type UnitSystem } from '../../../../shared/units/unit.js';
import { useOpener } from '../../explain/explain-panel.js';
import { DRAWN_AT_ONCE, series } from '../../look/series.js';
import { Fact, Facts } from '../../explain/number.js';
import { useDateAxis } from '../../explain/date-axis.js';
import { useSayDate } from '../../explain/say-date.js';

const HEIGHT = 260;
/** A day is narrower than a line on a phone: hay made on it is drawn as wide as can be seen. */
const BAR_WIDTH = 5;
const GRASS = 'Grass above the residuals';
const MADE = 'Hay made that day';

/** Grass above the residuals against what the herds need in the days ahead, with hay fed and made. */
export default function MassChart({
  plan,
  units,
  tables,
  day,
  onDay,
}: {
  plan: PasturePlan;
  units: UnitSystem;
  tables: Tables;
  day: number;
  onDay: (day: number) => void;
}) {
  const sayDate = useSayDate();
  const { tick, tooltip } = useDateAxis();
  const { reader } = useOpener();
  const ahead = `Need of the next ${plan.aheadDays.value} days`;
  const fed = 'Of it, fed as hay';
  const data = useMemo(() => {
    const shown = (kg: number): number => Math.round(toShown(kg, 'kg', units));
    const days = plan.paddocks[0]?.massByDay.length ?? 0;
    return Array.from({ length: days }, (_, each) => {
      const made = hayMadeOn(plan, each, tables);
      return {
        day: addDays(plan.from, each),
        [GRASS]: shown(usableOn(plan, each).value),
        [ahead]: shown(needAheadOf(plan, each).value),
        [fed]: shown(hayAheadOf(plan, each).value),
        ...(made ? { [MADE]: shown(made.value) } : {}),
      };
    });
  }, [plan, units, ahead, tables]);
  const date = addDays(plan.from, day);
  const isMade = data.some((row) => MADE in row);
  const isFed = data.some((row) => Number(row[fed as keyof typeof row]) !== 0);
  return (
    <Stack gap="sm">
      <CompositeChart
        className="mass-chart"
        h={HEIGHT}
        data={data}
        dataKey="day"
        series={[
          ...(isFed ? [{ name: fed, type: 'area' as const, color: 'var(--series-5)' }] : []),
          ...(isMade ? [{ name: MADE, type: 'bar' as const, color: 'var(--series-1)' }] : []),
          { name: GRASS, type: 'line', ...series(3) },
          { name: ahead, type: 'line', ...series(2) },
        ]}
        referenceLines={[{ x: date, color: 'var(--ink-soft)' }]}
        withLegend
        withDots={false}
        curveType="linear"
        valueFormatter={(amount) => formatValue(fromShown(amount, 'kg', units), 'kg', reader)}
        xAxisProps={{ minTickGap: 50, tickFormatter: tick }}
        tooltipProps={tooltip}
        yAxisProps={{ width: 84 }}
        composedChartProps={{
          onClick: ({ activeTooltipIndex }) => {
            const picked = Number(activeTooltipIndex ?? NaN);
            if (Number.isInteger(picked)) onDay(picked);
          },
        }}
        lineProps={DRAWN_AT_ONCE}
        areaProps={{ ...DRAWN_AT_ONCE, fill: 'url(#hay-fed)', fillOpacity: 1, strokeWidth: 1 }}
        barProps={{ ...DRAWN_AT_ONCE, barSize: BAR_WIDTH }}
      >
        <defs>
          {/* Lines, so that it is told from what is drawn full in gray as well. */}
          <pattern
            id="hay-fed"
            width={6}
            height={6}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line y2={6} stroke="var(--series-5)" strokeWidth={4} />
          </pattern>
        </defs>
      </CompositeChart>
      <Text size="sm">
        {sayDate(date)}. Dry matter, all of it. Touch the chart for another day, or slide to it
        under “Grass in each paddock”.
      </Text>
      <Facts>
        <Fact of={usableOn(plan, day)} />
        <Fact of={needAheadOf(plan, day)} />
        {isFed && <Fact of={hayAheadOf(plan, day)} />}
        <Fact of={hayMadeOn(plan, day, tables)} />
      </Facts>
    </Stack>
  );
}
