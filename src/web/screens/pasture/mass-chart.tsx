import '@mantine/charts/styles.css';
import { LineChart } from '@mantine/charts';
import { useReducedMotion } from '@mantine/hooks';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { formatShortDate } from '../../../../shared/units/format.js';
import { toShown, unitLabel, type UnitSystem } from '../../../../shared/units/unit.js';

const AHEAD_DAYS = 21;
const HEIGHT = 280;

/** Grass above the residuals against what the herds will eat in the next three weeks. */
export default function MassChart({ plan, units }: { plan: PasturePlan; units: UnitSystem }) {
  const still = useReducedMotion();
  const shown = (kg: number): number => Math.round(toShown(kg, 'kg', units));
  const days = plan.paddocks[0]?.massByDay.length ?? 0;
  const data = Array.from({ length: days }, (_, day) => {
    const usable = plan.paddocks.reduce(
      (sum, p) =>
        sum + (Math.max(0, p.massByDay[day]! - p.residualKgPerHa) * p.area.value) / 10_000,
      0,
    );
    const need = plan.herds.reduce(
      (sum, herd) => sum + herd.needByDay.slice(day, day + AHEAD_DAYS).reduce((a, b) => a + b, 0),
      0,
    );
    return {
      day: formatShortDate(addDays(plan.from, day)),
      'Grass above the residuals': shown(usable),
      'Need of the next three weeks': shown(need),
    };
  });
  return (
    <LineChart
      h={HEIGHT}
      data={data}
      dataKey="day"
      series={[
        { name: 'Grass above the residuals', color: 'green.9' },
        { name: 'Need of the next three weeks', color: 'red.8' },
      ]}
      withLegend
      withDots={false}
      unit={` ${unitLabel('kg', units)}`}
      xAxisProps={{ minTickGap: 50 }}
      yAxisProps={{ width: 84 }}
      {...(still ? { lineProps: { isAnimationActive: false } } : {})}
    />
  );
}
