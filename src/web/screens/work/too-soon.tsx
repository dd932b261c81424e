import './work.css';
import { Text } from '@mantine/core';
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
        {plan.eventsToMove.map(({ id, kind, ofId, name, from, to, names, said }) => (
          <li key={id}>
            <Text fw={700}>
              {name}, {sayDate(from)}: not ready before it: {names.join('; ')}.
            </Text>
            <Text size="sm">{said}</Text>
            {kind !== 'arrival' && to !== undefined && (
              <MoveLater key={to} {...{ farm, onKept }} later={{ kind, ofId, to }} />
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}
