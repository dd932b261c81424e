import '@mantine/charts/styles.css';
import { AreaChart } from '@mantine/charts';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { FeedYear } from '../../../../shared/plan/feed-year/feed-year.js';
import { formatValue } from '../../../../shared/units/format.js';
import { toShown, unitLabel } from '../../../../shared/units/unit.js';
import type { SavedFarm } from '../../api/queries.js';
import { useDateAxis } from '../../explain/date-axis.js';
import { DRAWN_AT_ONCE } from '../../look/series.js';

const HEIGHT = 220;

/** What lies in the feed store, day by day, under what it takes. */
export default function StoreChart({ year, farm }: { year: FeedYear; farm: SavedFarm }) {
  const { units } = farm;
  const { tick, tooltip } = useDateAxis();
  const { kgByDay, holdsKg } = year.store;
  return (
    <AreaChart
      h={HEIGHT}
      data={kgByDay.map((kg, day) => ({
        day: addDays(year.today, day),
        'In the store': Math.round(toShown(kg, 'kg', units)),
      }))}
      dataKey="day"
      series={[{ name: 'In the store', color: 'var(--series-1)' }]}
      {...(holdsKg === undefined
        ? {}
        : {
            referenceLines: [
              {
                y: Math.round(toShown(holdsKg, 'kg', units)),
                label: `Room for ${formatValue(holdsKg, 'kg', farm)}`,
                color: 'var(--stop)',
              },
            ],
          })}
      curveType="stepAfter"
      withDots={false}
      unit={` ${unitLabel('kg', units)}`}
      xAxisProps={{ minTickGap: 40, tickFormatter: tick }}
      tooltipProps={tooltip}
      yAxisProps={{ width: 66 }}
      areaProps={{ strokeWidth: 1, ...DRAWN_AT_ONCE }}
    />
  );
}
