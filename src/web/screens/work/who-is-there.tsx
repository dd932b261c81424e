import './work.css';
import { Text } from '@mantine/core';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { CareGap } from '../../../../shared/plan/work/care-gaps.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { Section } from '../../shell/section.js';
import { Ways } from '../../shell/ways.js';

/** What comes later is read when it is nearer. */
const NEAR_DAYS = 60;

/** Days on which the animals have nobody, said before anything else of the plan. */
export function WhoIsThere({ plan: { careGaps, today } }: { plan: WorkPlan }) {
  if (careGaps.length === 0) return null;
  const last = addDays(today, NEAR_DAYS);
  const isNear = ({ kind, from }: CareGap): boolean => kind === 'nobody-there' || from <= last;
  const near = careGaps.filter(isNear);
  const later = careGaps.filter((gap) => !isNear(gap));
  return (
    <Section title="Who is there for the animals?">
      {near.length === 0 && <Text>Somebody is there in the next {NEAR_DAYS} days.</Text>}
      {0 < near.length && <Gaps gaps={near} />}
      {0 < later.length && (
        <details>
          <summary>Later: {later.length}</summary>
          <Gaps gaps={later} />
        </details>
      )}
    </Section>
  );
}

const Gaps = ({ gaps }: { gaps: readonly CareGap[] }) => (
  <ul className="care-gaps">
    {gaps.map(({ kind, from, of, said, ways }) => (
      <li key={`${kind}/${from}/${of.join()}`}>
        <Text fw={kind === 'nobody-there' ? 700 : undefined}>{said}</Text>
        {kind === 'nobody-there' ? (
          <>
            What would do:
            <Ways ways={ways} />
          </>
        ) : (
          <details>
            <summary>What would do</summary>
            <Ways ways={ways} />
          </details>
        )}
      </li>
    ))}
  </ul>
);
