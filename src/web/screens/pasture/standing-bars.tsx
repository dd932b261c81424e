import { Slider, Stack, Text } from '@mantine/core';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { formatShortDate, formatValue, type Reader } from '../../../../shared/units/format.js';
import { STANDING_COLOURS, standingOf } from './season-strip.js';

const AHEAD_DAYS = 21;

/** Paddocks in order of what stands in them on a day, against what the herds will need. */
export function StandingBars({
  plan,
  reader,
  day,
  onDay,
}: {
  plan: PasturePlan;
  reader: Reader;
  day: number;
  onDay: (day: number) => void;
}) {
  const days = daysBetween(plan.from, plan.to);
  const date = addDays(plan.from, day);
  const rows = plan.paddocks
    .map((paddock) => ({ paddock, mass: paddock.massByDay[day] ?? 0 }))
    .sort((a, b) => b.mass - a.mass);
  const most = Math.max(1, ...plan.paddocks.map((p) => Math.max(p.rankKgPerHa, ...p.massByDay)));
  const usable = rows.reduce(
    (sum, { paddock, mass }) =>
      sum + (Math.max(0, mass - paddock.residualKgPerHa) * paddock.area.value) / 10_000,
    0,
  );
  const need = plan.herds.reduce(
    (sum, herd) => sum + herd.needByDay.slice(day, day + AHEAD_DAYS).reduce((a, b) => a + b, 0),
    0,
  );
  return (
    <Stack gap="xs">
      <Text fw={600}>{formatShortDate(date)}</Text>
      <Slider
        value={day}
        onChange={onDay}
        min={0}
        max={days}
        label={(value) => formatShortDate(addDays(plan.from, value))}
        thumbLabel="Day of the season"
        size="lg"
        mb="sm"
      />
      <ul className="bars">
        {rows.map(({ paddock, mass }) => (
          <li key={paddock.id}>
            <span>{paddock.name}</span>
            <span className="bar">
              <i
                style={{
                  width: `${(100 * mass) / most}%`,
                  background: STANDING_COLOURS[standingOf(paddock, mass, date)],
                }}
              />
              <b style={{ left: `${(100 * paddock.residualKgPerHa) / most}%` }} title="residual" />
              <b style={{ left: `${(100 * paddock.turnInKgPerHa) / most}%` }} title="turn-in" />
            </span>
            <span>{formatValue(mass, 'kgPerHa', reader)}</span>
          </li>
        ))}
      </ul>
      <Text size="sm">
        The marks are the residual and the turn-in. Above the residuals stand{' '}
        {formatValue(usable, 'kg', reader)}; the herds need {formatValue(need, 'kg', reader)} in the{' '}
        {AHEAD_DAYS} days from then.
      </Text>
    </Stack>
  );
}
