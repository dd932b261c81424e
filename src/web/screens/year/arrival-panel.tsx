import { Button, Group, Loader } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import type { Ref } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../../shared/farm/batch.js';
import type { ArrivalEffects } from '../../../../shared/plan/year/arrival-effects.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedBatch, type SavedFarm } from '../../api/queries.js';
import { useWorkIfMoved } from '../../api/work-queries.js';
import { IssueList } from '../../explain/issue-list.js';
import { Num } from '../../explain/number.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { problemsIn } from '../../fields/field-words.js';
import { messagesByField } from '../../fields/field-words.js';
import { Failure, Problems } from '../../shell/states.js';
import { batchWords } from '../batch/batch-labels.js';
import type { Slid, SlidPlan } from '../../../../shared/plan/year/slid-plan.js';

/** The service is asked once the hand rests. */
const REST_MS = 350;

/** What a slid arrival would do, and whether it is kept: until then nothing is saved. */
export function ArrivalPanel({
  farm,
  tables,
  batch,
  slid,
  plan,
  keepButton,
  onDone,
}: {
  farm: SavedFarm;
  tables: Tables;
  batch: SavedBatch;
  slid: Slid;
  plan: SlidPlan;
  keepButton: Ref<HTMLButtonElement>;
  onDone: () => void;
}) {
  const sayDate = useSayDate();
  const words = batchWords(batch.purpose, farm);
  const save = useSave<Batch, SavedBatch>(farm.id, 'batches', words);
  const isRefused = 'refused' in plan;
  const keep = (): void =>
    save.mutate({ ...batch, arrivalDate: slid.arrivalDate }, { onSuccess: onDone });
  return (
    <section className="year-panel no-print" aria-label="What moving the arrival would do">
      <h2>
        {batch.name}: {sayDate(slid.arrivalDate)}{' '}
        <small>
          {laterOrSooner(daysBetween(batch.arrivalDate, slid.arrivalDate))} than{' '}
          {sayDate(batch.arrivalDate)}. Nothing is saved yet.
        </small>
      </h2>
      {!isRefused && plan.nobodyHome.map((said) => <p key={said}>{said}</p>)}
      <Group>
        <Button
          ref={keepButton}
          aria-describedby="year-effects"
          onClick={keep}
          disabled={isRefused}
          loading={save.isPending}
        >
          Keep
        </Button>
        <Button variant="default" onClick={onDone}>
          Leave
        </Button>
      </Group>
      {isRefused ? (
        <Problems texts={Object.values(messagesByField(plan.refused.problems, words))} />
      ) : (
        <div className="year-effects" id="year-effects">
          <MovedDates effects={plan.effects} jobs={plan.jobs} />
          <Consequences effects={plan.effects} tables={tables} />
          <Hours farmId={farm.id} slid={slid} />
        </div>
      )}
      <Failure error={save.error} words={words} />
    </section>
  );
}

const laterOrSooner = (days: number): string =>
  `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'} ${days < 0 ? 'sooner' : 'later'}`;

function MovedDates({
  effects,
  jobs,
}: {
  effects: ArrivalEffects;
  jobs: readonly { readonly name: string; readonly from: string; readonly to: string }[];
}) {
  const sayDate = useSayDate();
  const moved = [
    ...effects.moved.filter(({ words }) => words !== 'arrive' && words !== 'hatch'),
    ...jobs.map(({ name, ...dates }) => ({ ...dates, words: `${name}, due` })),
  ];
  return (
    <div>
      <h3>Dates that move</h3>
      <ul>
        {moved.map(({ words, from, to }) => (
          <li key={`${words} ${from} ${to}`}>
            {words}: <b>{to === undefined ? 'not any more' : sayDate(to)}</b>
            {from !== undefined && <small> was {sayDate(from)}</small>}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Consequences({
  effects: { worse, better, still, coldNights },
  tables,
}: {
  effects: ArrivalEffects;
  tables: Tables;
}) {
  const lists = [
    { head: 'New warnings', issues: worse },
    { head: 'Warnings that go', issues: better },
    { head: 'Warnings as before', issues: still },
  ].filter(({ issues }) => 0 < issues.length);
  return (
    <div>
      <h3>What that does</h3>
      {coldNights && (
        <p>
          Nights too cold for them of the first week out:{' '}
          {coldNights.to ? <Num of={coldNights.to} /> : 'they do not go out'}
          {coldNights.from && (
            <small>
              {' '}
              was <Num of={coldNights.from} />
            </small>
          )}
        </p>
      )}
      {lists.map(({ head, issues }) => (
        <details key={head} open={issues === worse}>
          <summary>
            {head}: {issues.length}
          </summary>
          <IssueList issues={issues} tables={tables} />
        </details>
      ))}
      {!coldNights && lists.length === 0 && (
        <p>Nothing else: no place, freezer or night minds it.</p>
      )}
    </div>
  );
}

/** What it does to everybody's hours, which the whole plan of the work has to be fitted for. */
function Hours({ farmId, slid }: { farmId: string; slid: Slid }) {
  const sayDate = useSayDate();
  const [rested] = useDebouncedValue(slid, REST_MS);
  const asked = useWorkIfMoved(farmId, rested);
  const isOfNow = rested.arrivalDate === slid.arrivalDate;
  const { data: work } = asked;
  const newlyShort = work?.overloadedAfter.filter((week) => !work.overloadedBefore.includes(week));
  return (
    <div role="status">
      <h3>Hours</h3>
      {asked.error ? (
        <p>{whyNoHours(asked.error, sayDate)}</p>
      ) : !work || !isOfNow ? (
        <p>
          <Loader size="xs" /> Fitting the work in…
        </p>
      ) : (
        <ul>
          {work.nowFits.map((name) => (
            <li key={name}>You would have time for {name}.</li>
          ))}
          {work.noLongerFits.map(({ name }) => (
            <li key={name}>You would no longer have time for {name}.</li>
          ))}
          {newlyShort!.map((week) => (
            <li key={week}>More work due than hours in the week from {sayDate(week)}.</li>
          ))}
          {work.nowFits.length + work.noLongerFits.length + newlyShort!.length === 0 && (
            <li>You would have time for the same work as now.</li>
          )}
        </ul>
      )}
    </div>
  );
}

/** A day beyond the plan of the work is no mistake: its hours are not planned yet. */
function whyNoHours(error: Error, sayDate: SayDate): string {
  const [problem] = problemsIn(error);
  return problem?.code === 'out-of-bounds' && typeof problem.max === 'string'
    ? `Hours are planned until ${sayDate(problem.max)}; a day so far ahead comes into the plan of the work later.`
    : error.message;
}
