import '@mantine/charts/styles.css';
import { BarChart } from '@mantine/charts';
import { memo } from 'react';
import type { LayingPart } from '../../../../shared/plan/laying.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { DRAWN_AT_ONCE } from '../../look/series.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';

const HEIGHT = 260;

/** Eggs a week by month, with and without a lamp. The table under it holds the same numbers. */
export default function EggChart({ laying }: { laying: LayingPart }) {
  return <Drawn laying={useAfterDrawn(laying)} />;
}

const Drawn = memo(function Drawn({ laying: { months } }: { laying: LayingPart }) {
  return (
    <BarChart
      h={HEIGHT}
      data={months.map(({ from, unlit, lit }) => ({
        month: formatMonth(from),
        'No lamp': Math.round(unlit.value),
        Lamp: Math.round(lit.value),
      }))}
      dataKey="month"
      series={[
        { name: 'No lamp', color: 'var(--series-6)' },
        { name: 'Lamp', color: 'var(--series-5)' },
      ]}
      withLegend
      xAxisProps={{ minTickGap: 24 }}
      yAxisProps={{ width: 48 }}
      barProps={DRAWN_AT_ONCE}
    />
  );
});
