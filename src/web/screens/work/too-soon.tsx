import './work.css';
import { Text } from '@mantine/core';
import { notReady } from '../../../../shared/plan/work/not-ready.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import type { Kept } from '../../shell/kept-said.js';
import { Section } from '../../shell/section.js';
import { MoveLater } from '../../tick/move-later.js';

/** Animals that come or go out before all is ready for them, and the later day that would do. */
export function TooSoon({
  plan,
  farm,
  onKept,
}: {
  plan: WorkPlan;
  farm: SavedFarm;
  onKept: (kept: Kept) => void;
}) {
  const sayDate = useSayDate();
  if (plan.eventsToMove.length === 0) return null;
  return (
    <Section title="Before all is ready">
      <ul className="care-gaps">
        {plan.eventsToMove.map((event) => {
          const { id, kind, ofId, name, from, to, said } = event;
          const unready = notReady(event);
          return (
            <li key={id}>
              <Text fw={700}>
                {name}, {sayDate(from)}
                {unready !== undefined && `: ${unready}.`}
              </Text>
              <Text>{said}</Text>
              {kind !== 'arrival' && to !== undefined && (
                <MoveLater key={to} {...{ farm, onKept }} later={{ kind, ofId, to }} />
              )}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
