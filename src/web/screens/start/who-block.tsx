import { Button } from '@mantine/core';
import { OVER } from '../../../../shared/farm/absences.js';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { ChildAge, FreeTime } from '../../../../shared/farm/start.js';
import { useStartUsual } from '../../api/start-queries.js';
import { DateField } from '../../fields/date-input.js';
import { Select } from '../../fields/select.js';
import { Choices, Count } from './choices.js';
import { FreeTimeChoice } from './free-time.js';
import { weekInHours } from './week-in-hours.js';
import { todayIn, wrongWithAway, type AwayDraft, type StartDraft } from './start-draft.js';

const AGES: readonly { id: ChildAge; name: string; about: string }[] = [
  { id: 'under-8', name: 'Under 8', about: 'no work' },
  { id: '8-to-12', name: '8 to 12', about: 'half an hour a day, an hour at weekends' },
  { id: '13-and-up', name: '13 and up', about: 'an hour a day' },
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
  const { adults, children, ages, free, away } = draft;
  const today = todayIn(draft.place?.timeZone);
  const usual = useStartUsual().data?.freeTimes;
  const hoursIn = (time: FreeTime): string | undefined => {
    const hours = usual?.find(({ free: each }) => each === time)?.hoursByWeekday;
    return hours && weekInHours(hours);
  };
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
          <FreeTimeChoice
            key={k}
            legend={adults === 1 ? 'You have time' : `${names[k]} has time`}
            value={free[k]}
            hoursIn={hoursIn}
            onChange={(time) =>
              set({ free: Array.from({ length: adults }, (_, i) => (i === k ? time : free[i])) })
            }
          />
        ))}
        {Array.from({ length: adults }, (_, k) => free[k]).includes(undefined) && (
          <p className="start-small">
            Where you choose none, evenings and weekends beside a job are assumed.
          </p>
        )}
        {Array.from({ length: children }, (_, k) => (
          <Choices
            key={k}
            legend={`${names[adults + k]} is`}
            value={ages[k]}
            options={AGES}
            onChange={(age) =>
              set({ ages: Array.from({ length: children }, (_, i) => (i === k ? age : ages[i])) })
            }
          />
        ))}
        {0 < children && (
          <p className="start-small">
            A child is given the daily round of hens and pullets outdoors, and jobs you mark as for
            a child: no heat lamps, no cattle, no slaughter.
          </p>
        )}
        {away.map((each, k) => (
          <div key={k} className="start-row">
            <Select
              label="Away"
              value={String(each.person)}
              options={names.map((name, i) => ({ id: String(i), name }))}
              onChange={(person) => setAway(k, { person: Number(person) })}
            />
            <DateField
              label="From"
              value={each.from}
              error={
                wrongWithAway(each, today) === 'no-from' ? 'Give the first day as well.' : undefined
              }
              onChange={(from) => setAway(k, { from })}
            />
            <DateField
              label="To"
              value={each.to}
              error={saidOfTo(each, today, names[each.person] ?? 'Away')}
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

/** What is wrong with the last day of an absence, said at it. */
function saidOfTo(away: AwayDraft, today: PlainDate, name: string): string | undefined {
  const wrong = wrongWithAway(away, today);
  if (wrong === 'over') return OVER;
  if (wrong === 'swapped') return `${name}: the last day is before the first. Swap the two dates.`;
  return wrong === 'no-to' ? 'Give the last day as well.' : undefined;
}
