import { Button } from '@mantine/core';
import type { FreeTime } from '../../../../shared/farm/start.js';
import { DateField } from '../../fields/date-input.js';
import { Select } from '../../fields/select.js';
import { Choices, Count } from './choices.js';
import type { AwayDraft, StartDraft } from './start-draft.js';

const TIMES: readonly { id: FreeTime; name: string }[] = [
  { id: 'all-day', name: 'All day' },
  { id: 'mornings-and-evenings', name: 'Mornings and evenings' },
  { id: 'mornings', name: 'Mornings' },
  { id: 'evenings', name: 'Evenings' },
  { id: 'weekends', name: 'Weekends' },
];
const MOST_PEOPLE = 12;

/** Who is there, when they have time, and who is away. */
export function WhoBlock({
  draft,
  set,
}: {
  draft: StartDraft;
  set: (part: Partial<StartDraft>) => void;
}) {
  const { adults, children, free, away } = draft;
  const names = [
    ...Array.from({ length: adults }, (_, k) => `Adult ${k + 1}`),
    ...Array.from({ length: children }, (_, k) => `Child ${k + 1}`),
  ];
  const setAway = (k: number, part: Partial<AwayDraft>) =>
    set({ away: away.map((each, i) => (i === k ? { ...each, ...part } : each)) });
  return (
    <section className="start-block" aria-labelledby="start-who">
      <h2 id="start-who">Who is there?</h2>
      <div className="start-rows">
        <div className="start-row">
          <Count
            label="Adults"
            value={adults}
            least={1}
            most={MOST_PEOPLE}
            onChange={(count) => set({ adults: count })}
          />
          <Count
            label="Children"
            value={children}
            most={MOST_PEOPLE}
            onChange={(count) => set({ children: count })}
          />
        </div>
        {Array.from({ length: adults }, (_, k) => (
          <Choices
            key={k}
            legend={adults === 1 ? 'You have time' : `${names[k]} has time`}
            value={free[k]}
            options={TIMES}
            onChange={(time) =>
              set({ free: Array.from({ length: adults }, (_, i) => (i === k ? time : free[i])) })
            }
          />
        ))}
        {away.map((each, k) => (
          <div key={k} className="start-row">
            <Select
              label="Away"
              value={String(each.person)}
              options={names.map((name, i) => ({ id: String(i), name }))}
              onChange={(person) => setAway(k, { person: Number(person) })}
            />
            <DateField label="From" value={each.from} onChange={(from) => setAway(k, { from })} />
            <DateField
              label="To"
              value={each.to}
              error={
                each.from && each.to && each.to < each.from
                  ? 'The last day is before the first.'
                  : undefined
              }
              onChange={(to) => setAway(k, { to })}
            />
            <Button variant="subtle" onClick={() => set({ away: away.filter((_, i) => i !== k) })}>
              Remove
            </Button>
          </div>
        ))}
        <div>
          <Button variant="default" onClick={() => set({ away: [...away, { person: 0 }] })}>
            Somebody will be away
          </Button>
        </div>
      </div>
    </section>
  );
}
