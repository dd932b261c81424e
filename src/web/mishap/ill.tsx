import { Stack, Text } from '@mantine/core';
import { isGrownUp } from '../../../shared/farm/who-is-there.js';
import { useState } from 'react';
import { Link } from 'wouter';
import { addDays } from '../../../shared/calendar/plain-date.js';
import { withAway } from '../../../shared/farm/absences.js';
import { putBack } from '../../../shared/farm/put-back.js';
import { personFields, type Person } from '../../../shared/farm/farm.js';
import type { WorkComparison } from '../../../shared/plan/work/compare-plans.js';
import { farmDay, usePeople, useSave, type SavedFarm } from '../api/queries.js';
import { useWorkIfAway } from '../api/work-queries.js';
import { useSayDate } from '../explain/say-date.js';
import { wordsOfRow } from '../fields/field-words.js';
import { WhoAndWhen } from '../fields/who-and-when.js';
import { ChangeList } from '../screens/work/change-list.js';
import { Failure, useAll } from '../shell/states.js';
import { Follows, KeepOrLeave } from './mishap-parts.js';
import type { MishapProps } from './mishap-props.js';

/** So long a cold or a bad back takes, where nobody knows better yet. */
const USUAL_DAYS = 3;

/** Somebody cannot work from today on: what has nobody, what moves, who takes it. */
export default function Ill({ farm, onDone, onBack }: MishapProps) {
  const all = useAll(usePeople(farm.id));
  if ('waiting' in all) return all.waiting;
  const people = all.data[0].filter(isGrownUp);
  if (people.length === 0) {
    return (
      <Text>
        Nobody is named yet. <Link href={`/farm/${farm.id}/place`}>Add people</Link> with their
        hours.
      </Text>
    );
  }
  return <Who {...{ farm, people, onDone, onBack }} />;
}

function Who({
  farm,
  people,
  onDone,
  onBack,
}: Omit<MishapProps, 'animals' | 'lowC' | 'onTell'> & { readonly people: readonly Person[] }) {
  const today = farmDay(farm);
  const [awayIds, setAwayIds] = useState(people.length === 1 ? [people[0]!.id] : []);
  const [to, setTo] = useState<string | undefined>(addDays(today, USUAL_DAYS - 1));
  const ask = useWorkIfAway(farm.id);
  const words = wordsOfRow(personFields, farm);
  const save = useSave<Person>(farm.id, 'people', words);
  const isAsked = 0 < awayIds.length && to !== undefined && today <= to;
  const tell = (ids: readonly string[], until: string | undefined): void => {
    if (0 < ids.length && until !== undefined && today <= until)
      ask.mutate({ awayIds: ids, to: until });
    else ask.reset();
  };
  const back = useSave<Person>(farm.id, 'people', words, { isPutBack: true });
  const sayDate = useSayDate();
  const keep = async (): Promise<void> => {
    const ill = people.filter(({ id }) => awayIds.includes(id));
    const rows: Person[] = [];
    for (const person of withAway(ill, { awayIds, from: today, to: to! })) {
      const before = ill.find(({ id }) => id === person.id)!;
      rows.push(putBack<Person>(before, person, await save.mutateAsync(person)));
    }
    onDone({
      words: `${ill.map(({ name }) => name).join(' and ')} ill until ${sayDate(to!)}`,
      undo: async () => {
        for (const row of rows) await back.mutateAsync(row);
      },
    });
  };
  return (
    <Stack gap="sm">
      <WhoAndWhen
        people={people}
        awayIds={awayIds}
        days={{ to }}
        ends={['to']}
        labels={{ who: 'Who is ill', from: 'From', to: 'Until about' }}
        errorAt={(field) =>
          field === 'to' && to !== undefined && to < today
            ? 'Give today or a later day.'
            : undefined
        }
        onAway={(ids) => {
          setAwayIds(ids);
          tell(ids, to);
        }}
        onDays={(days) => {
          setTo(days.to);
          tell(awayIds, days.to);
        }}
      />
      {people.length === 1 && !ask.data && !ask.isPending && isAsked && (
        <KeepOrLeave keep="What follows?" onKeep={() => tell(awayIds, to)} onBack={onBack} />
      )}
      <div role="status">
        {ask.isPending && <Text>The work is planned again …</Text>}
        {ask.data && isAsked && <Outcome farm={farm} answer={ask.data} to={to} />}
      </div>
      <Failure error={ask.error ?? save.error} />
      {(people.length > 1 || ask.data) && (
        <KeepOrLeave
          keep="Keep it"
          isOff={!isAsked}
          isKeeping={save.isPending}
          onKeep={() => void keep().catch(() => undefined)}
          onBack={onBack}
        />
      )}
    </Stack>
  );
}

/** Nobody reads on what moves weeks from now: these days, and what they push. */
function Outcome({ farm, answer, to }: { farm: SavedFarm; answer: WorkComparison; to: string }) {
  const sayDate = useSayDate();
  const { newGaps, takenOver, noLongerFits, changes } = answer;
  const near = takenOver.filter(({ on }) => on <= to);
  // What has no time any more is said above.
  const lost = new Set(noLongerFits.map(({ key }) => key));
  const moved = changes.filter(
    ({ key, kind, from }) => kind !== 'new' && from !== undefined && from <= to && !lost.has(key),
  );
  return (
    <Stack gap="xs">
      {newGaps.length === 0 ? (
        <Text fw={700}>The animals have somebody every day.</Text>
      ) : (
        <>
          {newGaps.map(({ said, ways }) => (
            <div key={said}>
              <Text fw={700}>{said}</Text>
              <Text>{ways.join(' Or: ')}</Text>
            </div>
          ))}
          <Text>
            <Link href={`/farm/${farm.id}/work/away`}>Put somebody in charge</Link>, with a sheet of
            the round.
          </Text>
        </>
      )}
      {0 < near.length && (
        <Follows
          label="Who takes it over"
          lines={near.map(
            ({ name, by, on }) => `${name}, ${sayDate(on)}: ${by.join(' and ')} instead.`,
          )}
        />
      )}
      {0 < noLongerFits.length && (
        <Follows
          label="No time any more"
          lines={noLongerFits.map(({ name, why }) => `No time any more for “${name}”. ${why}`)}
        />
      )}
      <ChangeList changes={moved} none="No work of these days moves." />
    </Stack>
  );
}
