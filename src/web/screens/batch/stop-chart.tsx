import '@mantine/charts/styles.css';
import { LineChart } from '@mantine/charts';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { DailySeries } from '../../../../shared/explain/daily-series.js';
import type { StopWeek } from '../../../../shared/plan/cost/stop-weeks.js';
import { minorDigits } from '../../../../shared/units/format.js';
import { toShown, unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';
import { useDateAxis } from '../../explain/date-axis.js';
import { DRAWN_AT_ONCE, series } from '../../look/series.js';

interface Props {
  readonly daily: readonly DailySeries[];
  readonly arrivalDate: string;
  readonly weeks: readonly StopWeek[];
  readonly units: UnitSystem;
  readonly currency: string;
}

const HEIGHT = 260;
const NEXT = 'What they gain next';
const ALL = 'All of the meat';

/** The best day is where the lines cross: from there on more of it brings the average up. */
export default function StopChart({ daily, arrivalDate, weeks, units, currency }: Props) {
  const { tick, tooltip } = useDateAxis();
  const shown = weeks.filter(({ next }) => next);
  const [first, last] = [shown[0], weeks.at(-1)].map((week) =>
    week ? daysBetween(arrivalDate, String(week.on.value)) : 0,
  );
  const valueOf = (id: string, day: number): number => {
    const minor = daily.find((each) => each.id === id)?.values[day] ?? 0;
    return Number((toShown(minor, 'moneyPerKg', units) / 10 ** minorDigits(currency)).toFixed(2));
  };
  const days = Array.from({ length: last! - first! + 1 }, (_, k) => first! + k);
  return (
    <LineChart
      h={HEIGHT}
      data={days.map((day) => ({
        day: addDays(arrivalDate, day),
        [NEXT]: valueOf('next-kg', day),
        [ALL]: valueOf('each-kg', day),
      }))}
      dataKey="day"
      series={[
        { name: NEXT, ...series(2) },
        { name: ALL, ...series(1) },
      ]}
      withLegend
      withDots={false}
      unit={` ${unitLabel('moneyPerKg', units)}`}
      xAxisProps={{ minTickGap: 40, tickFormatter: tick }}
      tooltipProps={tooltip}
      yAxisProps={{ width: 72, domain: [0, 'auto'] }}
      lineProps={DRAWN_AT_ONCE}
    />
  );
}
