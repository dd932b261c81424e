import '@mantine/charts/styles.css';
import { BarChart } from '@mantine/charts';
import type { FeedYear } from '../../../../shared/plan/feed-year/feed-year.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { formatMoney, minorDigits } from '../../../../shared/units/format.js';
import { DRAWN_AT_ONCE } from '../../look/series.js';

const HEIGHT = 260;

/** What is paid for feed by month. The table under it holds the same numbers. */
export default function CashChart({ year: { months, currency } }: { year: FeedYear }) {
  const major = (minor: number): number => minor / 10 ** minorDigits(currency);
  const whole = (value: number): string =>
    formatMoney(value * 10 ** minorDigits(currency), currency).replace(/[.,]0+(?=\D*$)/, '');
  const series = [
    { name: 'Feed', color: 'var(--series-1)', of: 'feedMinor' },
    { name: 'Trips', color: 'var(--series-2)', of: 'tripsMinor' },
    { name: 'Hay', color: 'var(--series-5)', of: 'hayMinor' },
    { name: 'Minerals, salt', color: 'var(--series-6)', of: 'mineralsMinor' },
  ] as const;
  const shown = series.filter(({ of }) => months.some((month) => 0 < month[of]));
  return (
    <BarChart
      h={HEIGHT}
      mb="md"
      type="stacked"
      data={months.map((month) => ({
        month: formatMonth(month.month),
        ...Object.fromEntries(shown.map(({ name, of }) => [name, major(month[of])])),
      }))}
      dataKey="month"
      series={shown.map(({ name, color }) => ({ name, color }))}
      valueFormatter={(value) =>
        formatMoney(Math.round(value * 10 ** minorDigits(currency)), currency)
      }
      withLegend
      xAxisProps={{ minTickGap: 24 }}
      yAxisProps={{ width: 60, tickFormatter: whole }}
      barProps={DRAWN_AT_ONCE}
    />
  );
}
