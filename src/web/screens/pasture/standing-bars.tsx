import './pasture.css';
import { Slider, Stack, Text } from '@mantine/core';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import {
  averageOn,
  heightOn,
  needAheadOf,
  standingOn,
  usableOn,
} from '../../../../shared/plan/pasture/standing.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { STANDING_COLOURS, standingOf } from './season-strip.js';

/** Paddocks in order of what stands in them on a day, against what the herds will need. */
export function StandingBars({
  plan,
  day,
  onDay,
}: {
  plan: PasturePlan;
  day: number;
  onDay: (day: number) => void;
}) {
  const sayDate = useSayDate();
  const days = daysBetween(plan.from, plan.to);
  const date = addDays(plan.from, day);
  const rows = plan.paddocks
    .map((paddock) => ({ paddock, mass: paddock.massByDay[day] ?? 0 }))
    .sort((a, b) => b.mass - a.mass);
  const most = Math.max(1, ...plan.paddocks.map((p) => Math.max(p.rankKgPerHa, ...p.massByDay)));
  return (
    <Stack gap="xs">
      <Text fw={600}>{sayDate(date)}</Text>
      <Slider
        value={day}
        onChange={onDay}
        min={0}
        max={days}
        label={(value) => sayDate(addDays(plan.from, value))}
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
              <b
                style={{ left: `${(100 * paddock.readyFromCm * paddock.perCm.value) / most}%` }}
                title="ready from here"
              />
              <b
                style={{ left: `${(100 * paddock.turnInKgPerHa) / most}%` }}
                title="best height to go in"
              />
            </span>
            <span>
              <Num of={heightOn(plan, paddock, day)} />
            </span>
            <span>
              <Num of={standingOn(plan, paddock, day)} />
            </span>
          </li>
        ))}
      </ul>
      <Text size="sm">
        In the evening of that day; the marks are the residual (what you leave standing) and the
        least and best height to go in at.
      </Text>
      <Facts>
        <Fact of={averageOn(plan, day)} />
        <Fact of={usableOn(plan, day)} />
        <Fact of={needAheadOf(plan, day)} />
      </Facts>
    </Stack>
  );
}
