import '@mantine/charts/styles.css';
import { AreaChart, LineChart } from '@mantine/charts';
import { memo } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { daysOfBirds } from '../../../../shared/plan/days-of-birds.js';
import {
  SHOWN,
  toShown,
  unitLabel,
  type Unit,
  type UnitSystem,
} from '../../../../shared/units/unit.js';
import { useDateAxis } from '../../explain/date-axis.js';
import { DRAWN_AT_ONCE, series, type SeriesNumber } from '../../look/series.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';

interface Line {
  readonly series: string;
  readonly name: string;
  readonly as: SeriesNumber;
}

const HEIGHT = 260;

export type ChartOf = 'heat' | 'weight' | 'feed' | 'eggs' | 'floor';

interface Props {
  readonly plan: BatchPlan;
  readonly units: UnitSystem;
  readonly of: ChartOf;
}

/**
 * One chart of a plan, drawn when the numbers around it stand: they are read first. The same is to be
 * read as numbers under "Day by day".
 */
export default function PlanChart({ plan, ...props }: Props) {
  return <Drawn plan={useAfterDrawn(plan)} {...props} />;
}

const Drawn = memo(function Drawn({ plan, units, of }: Props) {
  const { tick, tooltip } = useDateAxis();
  const days = daysOfBirds(plan);
  const out = plan.daily.find((s) => s.id === 'floor-need')?.values.length ?? 0;
  const warm = Math.min(days, Math.max(out + 7, 21));
  const label = (unit: Unit) => unitLabel(unit, units);
  const floor = plan.space.needs[0]?.have;
  const lines = (unit: Unit, until: number, shown: readonly Line[]) => ({
    h: HEIGHT,
    data: rows(plan, unit, units, until, shown),
    dataKey: 'day',
    series: shown
      .filter((l) => plan.daily.some((s) => s.id === l.series))
      .map(({ name, as }) => ({ name, ...series(as) })),
    withLegend: true,
    withDots: false,
    unit: ` ${label(unit)}`,
    xAxisProps: { minTickGap: 40, tickFormatter: tick },
    tooltipProps: tooltip,
    yAxisProps: { width: 66, domain: ['auto', 'auto'] as ['auto', 'auto'] },
  });
  if (of === 'heat') {
    return (
      <LineChart
        {...lines('degC', warm, [
          { series: 'under-heater', name: 'Under the heat', as: 2 },
          { series: 'night-low', name: 'Night low expected', as: 1 },
          { series: 'night-cold', name: 'Cold night', as: 6 },
        ])}
        curveType="stepAfter"
        lineProps={DRAWN_AT_ONCE}
      />
    );
  }
  if (of === 'weight') {
    return (
      <LineChart
        {...lines('kg', plan.purpose === 'meat' ? days : Math.min(days, 210), [
          { series: 'weight-male', name: sexOf(plan, 'weight-male'), as: 1 },
          { series: 'weight-female', name: sexOf(plan, 'weight-female'), as: 2 },
        ])}
        lineProps={DRAWN_AT_ONCE}
      />
    );
  }
  if (of === 'feed') {
    return (
      <AreaChart
        h={HEIGHT}
        {...feedByPhase(plan, units)}
        dataKey="day"
        type="stacked"
        withLegend
        withDots={false}
        curveType="step"
        unit={` ${label('kg')}`}
        xAxisProps={{ minTickGap: 40, tickFormatter: tick }}
        tooltipProps={tooltip}
        yAxisProps={{ width: 66 }}
        fillOpacity={0.7}
        areaProps={{ strokeWidth: 0, ...DRAWN_AT_ONCE }}
      />
    );
  }
  if (of === 'eggs') {
    return (
      <AreaChart
        {...lines('eggs', days, [{ series: 'eggs-day', name: 'Eggs', as: 5 }])}
        yAxisProps={{ width: 66 }}
        areaProps={DRAWN_AT_ONCE}
      />
    );
  }
  return (
    <LineChart
      {...withConstant(
        lines('m2', Math.max(out, 1), [{ series: 'floor-need', name: 'Needed', as: 2 }]),
        floor && toShown(floor.value, 'm2', units),
      )}
      curveType="stepAfter"
      yAxisProps={{ width: 66, domain: [0, 'auto'] }}
      lineProps={DRAWN_AT_ONCE}
    />
  );
});

/** What the birds of a line are called: “Live weight, drake” is of the drakes. */
function sexOf({ daily }: BatchPlan, series: string): string {
  const word = daily.find(({ id }) => id === series)?.label.split(', ')[1] ?? '';
  return word.replace(/^./, (first) => first.toUpperCase());
}

/** The same chart with a level line for what there is. */
function withConstant<
  T extends { data: Record<string, string | number>[]; series: { name: string; color: string }[] },
>(chart: T, level: number | undefined): T {
  if (level === undefined) return chart;
  const shown = Number(level.toFixed(1));
  return {
    ...chart,
    data: chart.data.map((row) => ({ ...row, Have: shown })),
    series: [...chart.series, { name: 'Have', ...series(3) }],
  };
}

/** Rows of a chart. Long plans are drawn with a point every few days. */
function rows(
  plan: BatchPlan,
  unit: Unit,
  units: UnitSystem,
  until: number,
  lines: readonly Line[],
): Record<string, string | number>[] {
  const step = Math.max(1, Math.floor(until / 120));
  const result: Record<string, string | number>[] = [];
  for (let i = 0; i < until; i += step) {
    const row: Record<string, string | number> = {
      day: addDays(plan.arrivalDate, i),
    };
    for (const line of lines) {
      const value = plan.daily.find((s) => s.id === line.series)?.values[i];
      if (value !== undefined)
        row[line.name] = Number(toShown(value, unit, units).toFixed(SHOWN[unit][units].digits));
    }
    result.push(row);
  }
  return result;
}

const PHASES: readonly SeriesNumber[] = [5, 3, 1, 4, 2, 6];

function feedByPhase(plan: BatchPlan, units: UnitSystem) {
  const feed = plan.daily.find((s) => s.id === 'feed-day')!.values;
  const step = Math.max(1, Math.floor(feed.length / 120));
  const data: Record<string, string | number>[] = [];
  for (let i = 0; i < feed.length - 1; i += step) {
    const date = addDays(plan.arrivalDate, i);
    const phase = plan.feed.phases.find((p) => String(p.starts.value) <= date && date <= p.lastDay);
    const kg = Number(toShown(feed[i]!, 'kg', units).toFixed(2));
    data.push({
      day: date,
      ...Object.fromEntries(plan.feed.phases.map((p) => [p.name, p === phase ? kg : 0])),
    });
  }
  return {
    data,
    series: plan.feed.phases.map((p, k) => ({
      name: p.name,
      color: series(PHASES[k % PHASES.length]!).color,
    })),
  };
}
