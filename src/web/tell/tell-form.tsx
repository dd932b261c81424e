import { Button, Checkbox, Group, SimpleGrid, Stack } from '@mantine/core';
import { useState } from 'react';
import type { PlainDate } from '../../../shared/calendar/plain-date.js';
import type { Field } from '../../../shared/farm/field.js';
import type { ToldFact, ToldKind } from '../../../shared/farm/told-fact.js';
import { doubtOfBirds, doubtOfDay, type AskedFrom } from '../../../shared/farm/told-doubts.js';
import { isSame } from '../../../shared/farm/merge-row.js';
import { toldWithBefore } from '../../../shared/plan/pasture/move-told.js';
import type { DateReader } from '../../../shared/units/dates.js';
import { formatValue } from '../../../shared/units/format.js';
import { useProducts, useTables, type SavedFarm } from '../api/queries.js';
import { useLastTold } from '../api/last-told-queries.js';
import { useTell } from '../api/told-queries.js';
import { problemsOfFact, wordsOfFact } from '../api/told-words.js';
import { useOpener } from '../explain/explain-panel.js';
import { DateField } from '../fields/date-input.js';
import { DescribedField } from '../fields/described-field.js';
import { messagesByField, problemsIn, unreadNumbers } from '../fields/field-words.js';
import { useWayBack } from '../fields/form-dialog.js';
import { Failure } from '../shell/states.js';
import { PhotosField } from './photos-field.js';
import { NOTHING, proposalOf, type Feed, type Known, type Proposal } from './proposed.js';
import type { Tellable } from './what-to-tell.js';

interface Props {
  readonly farm: SavedFarm;
  readonly today: PlainDate;
  readonly what: Tellable;
  /** The fact that it changes, and its day. */
  readonly changes?: { readonly id: string; readonly on: PlainDate };
  /** Rows of which a field names one, by the field. */
  readonly rows?: Readonly<Record<string, readonly Named[]>>;
  /** What is known that its numbers most likely are. */
  readonly known?: Known;
  readonly onTold: (fact: ToldFact) => void;
  readonly onBack: () => void;
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Fields that name one of some rows, asked for where there are any. */
const NAMES_ONE: ReadonlySet<string> = new Set(['cowId', 'classId']);

type Draft = Readonly<Record<string, unknown>>;

/** One thing that happened: its numbers are filled in as planned, and one press tells it. */
export function TellForm({ farm, today, what, changes, rows = {}, known, onTold, onBack }: Props) {
  const { sayDate } = useOpener();
  // Only what was typed: what stands beside it follows what becomes known meanwhile.
  const [typed, setTyped] = useState<Draft>({});
  const feeds = useFeeds(
    farm,
    what.kind === 'bought' && { ...what.start, ...typed }['what'] === 'feed',
  );
  const [on, setOn] = useState<PlainDate | undefined>(changes?.on ?? what.on ?? today);
  const asked = useTables().data?.judgements.alarms;
  const lastTold = useLastTold(farm.id, changes ? undefined : what.kind, today);
  const propose = (draft: Draft): Proposal =>
    // What was left out when it was told was left out on purpose.
    changes || !asked
      ? NOTHING
      : proposalOf({
          ...{ kind: what.kind, about: what.about, lastTold, ...known, draft, today, on, sayDate },
          ...{ feeds: feeds ?? [], units: farm.units, currency: farm.currency },
          holds: { price: asked.priceHoldsDays.value, milk: asked.milkHoldsDays.value },
        });
  const start = withoutProposed(what.start, propose(what.start));
  const proposal = propose({ ...start, ...typed });
  const proposed: Draft = { ...proposal.values, ...start };
  /** The box that is being typed in, as it stood when that began: what is proposed meanwhile waits. */
  const [held, hold] = useState<{ readonly name: string; readonly value: unknown }>();
  const draft: Draft = { ...proposed, ...(held ? { [held.name]: held.value } : {}), ...typed };
  const type = (change: (now: Draft) => Draft): void =>
    setTyped((old) => ({ ...old, ...change({ ...what.start, ...old }) }));
  /** An empty box that somebody is in, or emptied, is not filled in: what it would be is offered beside it. */
  const isOffered = (name: string): boolean =>
    draft[name] === undefined && proposed[name] !== undefined;
  const tell = useTell<ToldKind>(farm.id);
  const isChanged = Object.entries(typed).some(([name, value]) => !isSame(value, what.start[name]));
  const back = useWayBack(
    { isUnsaved: isChanged && !tell.isSuccess, discard: () => setTyped({}) },
    onBack,
  );
  const words = wordsOfFact(what.fields, farm);
  const problems = problemsOfFact(problemsIn(tell.error));
  const errors = messagesByField(problems, words);
  const fields = Object.entries(what.fields.fields).filter(
    ([name]) => name !== 'work' && (!NAMES_ONE.has(name) || 0 < (rows[name]?.length ?? 0)),
  );
  const doubts = asked ? doubtsOf(what, draft, on, { ...farm, today }, asked) : [];
  /** Doubts that were said to be right all the same. */
  const [meant, setMeant] = useState<readonly string[]>([]);
  const isRight =
    on !== undefined &&
    doubts.every((doubt) => meant.includes(doubt)) &&
    unreadNumbers(draft).length === 0 &&
    fields.every(([name, { isOptional }]) => isOptional || draft[name] !== undefined);
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!isRight) return;
        const said = {
          ...withMovesBefore(what, on, withoutNothing(draft)),
          ...(changes ? { replaces: changes.id } : {}),
        };
        tell.mutate(said as Parameters<typeof tell.mutate>[0], {
          onSuccess: ([fact]) => fact && onTold(fact as ToldFact),
        });
      }}
    >
      <Stack gap="sm">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          {fields.map(([name, field], k) =>
            name === 'photos' ? (
              <PhotosField
                key={name}
                farmId={farm.id}
                value={draft[name] as readonly string[] | undefined}
                error={errors[name]}
                onChange={(change) => type((now) => ({ [name]: change(now[name] as never) }))}
              />
            ) : (
              <div
                key={name}
                style={field.kind === 'list' ? { gridColumn: '1 / -1' } : undefined}
                onFocus={() => hold({ name, value: draft[name] })}
                onBlur={() => hold(undefined)}
              >
                <DescribedField
                  field={field}
                  reader={farm}
                  {...(rows[name] ? { rows: rows[name] } : {})}
                  hint={
                    (name in start || name in typed || isOffered(name)
                      ? undefined
                      : proposal.said[name]) ?? byThePlan(what.planKg?.[name], farm)
                  }
                  {...(name === 'name' && feeds
                    ? { suggested: feeds.map((feed) => feed.name) }
                    : {})}
                  isFirst={k === 0}
                  value={draft[name]}
                  error={errors[name]}
                  onChange={(value) => type(() => told(name, value))}
                />
                {isOffered(name) && (
                  <Button
                    variant="default"
                    size="compact-md"
                    onClick={() => type(() => told(name, proposed[name]))}
                  >
                    Fill in {shownOf(field, proposed[name], farm)}
                  </Button>
                )}
              </div>
            ),
          )}
          <DateField label="Day" value={on} max={today} error={errors['on']} onChange={setOn} />
        </SimpleGrid>
        {doubts.map((doubt) => (
          <Checkbox
            key={doubt}
            label={doubt}
            checked={meant.includes(doubt)}
            onChange={({ currentTarget: { checked } }) =>
              setMeant((before) => [
                ...before.filter((each) => each !== doubt),
                ...(checked ? [doubt] : []),
              ])
            }
          />
        ))}
        {problems.length === 0 && <Failure error={tell.error} />}
        <Group>
          <Button type="submit" size="md" disabled={!isRight} loading={tell.isPending}>
            {changes ? 'Change it' : 'Tell it'}
          </Button>
          <Button variant="subtle" onClick={back}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

/** What is asked before it is told, because it is more likely a slip. */
function doubtsOf(
  { kind, start }: Tellable,
  { birds }: Draft,
  on: PlainDate | undefined,
  reader: DateReader & { readonly today: PlainDate },
  asked: AskedFrom,
): string[] {
  const isBox =
    kind === 'arrived' && typeof birds === 'number' && typeof start['birds'] === 'number';
  return [
    isBox ? doubtOfBirds(birds, start['birds'] as number, asked) : undefined,
    on === undefined ? undefined : doubtOfDay(on, reader, asked),
  ].filter((doubt) => doubt !== undefined);
}

/** A value as its box would show it. */
const shownOf = (field: Field, value: unknown, farm: SavedFarm): string =>
  field.kind === 'number' && typeof value === 'number'
    ? formatValue(value, field.bounds.unit, farm)
    : String(value);

const byThePlan = (kg: number | undefined, farm: SavedFarm): string | undefined =>
  kg === undefined ? undefined : `By the plan ${formatValue(kg, 'kg', farm)} each.`;

/** What is said, and of a herd that is taken to have moved the moves before it: they hold with it. */
function withMovesBefore({ kind, about, unsaid = [] }: Tellable, on: PlainDate, details: Draft) {
  if (unsaid.every((move) => on <= move.on)) return { kind, about, on, details };
  const { paddockId, leftHeightCm } = details as { paddockId?: string; leftHeightCm?: number };
  const goes = {
    herdId: about,
    assumed: unsaid,
    ...(paddockId === undefined ? {} : { paddockId }),
  };
  const told = toldWithBefore(goes, on);
  const last = told.at(-1)!;
  const left = leftHeightCm === undefined ? {} : { leftHeightCm };
  return { ...last, details: { ...last.details, ...left }, before: told.slice(0, -1) };
}

/** The feeds that the place buys, so that a purchase is told under the same name. */
function useFeeds(farm: SavedFarm, isFeed: boolean): readonly Feed[] | undefined {
  const products = useProducts(farm.id).data;
  return isFeed ? products?.flatMap((each) => (each.kind === 'feed' ? [each] : [])) : undefined;
}

/** What stands as it was proposed goes on following what is typed beside it. */
function withoutProposed(start: Draft, { values }: Proposal): Draft {
  const rest = Object.entries(start).filter(
    ([name, value]) => value === undefined || values[name] !== value,
  );
  return Object.fromEntries(rest);
}

/** Birds that are weighed one by one count themselves. */
const told = (name: string, value: unknown): Draft =>
  name === 'eachKg'
    ? { eachKg: value, birds: Array.isArray(value) ? value.length : undefined }
    : { [name]: value };

const withoutNothing = (draft: Draft): Draft =>
  Object.fromEntries(Object.entries(draft).filter(([, value]) => value !== undefined));
