import { Alert, Button, Card, Group, List, Stack, Text, Title } from '@mantine/core';
import { useMemo, useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { readyGoalFields, type ReadyGoal } from '../../../../shared/farm/ready-goal.js';
import { birdWordsOf, capital } from '../../../../shared/plan/bird-words.js';
import type { LargestBatch } from '../../../../shared/plan/largest-batch.js';
import { readyBy, type ReadyArrival, type ReadyBy } from '../../../../shared/plan/ready-by.js';
import { weekInWords } from '../../../../shared/plan/week-in-words.js';
import { FieldError } from '../../../../shared/problems/field-problem.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { messagesByField } from '../../fields/field-words.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import { batchWords } from './batch-labels.js';
import { NO_SLOT, NOT_AT_HOME } from './no-processing.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';

const FIELDS = readyGoalFields.fields;

const MEAT_GOALS = [
  { id: 'ready', name: 'Rested and ready to eat' },
  { id: 'slot', name: 'A slot booked at a processor' },
] as const;
const EGG_GOALS = [{ id: 'eggs', name: 'First eggs' }] as const;

/** The box is first filled with so many days past the arrival that is planned, or past today. */
const FIRST_AHEAD_DAYS = 120;

/** The plan from the other end: a day to be ready by gives the days on which chicks would come. */
export function ReadyByCard({
  asked,
  weekday,
  onPick,
}: {
  asked: AskedBatch;
  weekday: number;
  onPick: (more: BatchDraft) => void;
}) {
  const isMeat = asked.batch.purpose === 'meat';
  const [chosen, setChosen] = useState<ReadyGoal['goal']>('ready');
  const [on, setOn] = useState(() => {
    const { picture, batch } = asked;
    const from = picture.today < batch.arrivalDate ? batch.arrivalDate : picture.today;
    return addDays(from, FIRST_AHEAD_DAYS);
  });
  const goal = !isMeat ? 'eggs' : chosen === 'slot' ? 'slot' : 'ready';
  const [head, setHead] = useState<number>();
  const found = useMemo(
    () =>
      ask(asked, {
        ...{ goal, on, weekday },
        ...(goal === 'slot' && head !== undefined ? { head } : {}),
      }),
    [asked, goal, on, weekday, head],
  );
  return (
    <Card withBorder component="section">
      <Title order={3} size="h3" mb="sm">
        Ready by
      </Title>
      <Stack gap="sm">
        <Group align="end">
          {isMeat && (
            <Select
              label={FIELDS.goal.label}
              value={goal}
              options={isMeat ? MEAT_GOALS : EGG_GOALS}
              onChange={(next) => next && setChosen(next)}
            />
          )}
          <DateField
            label={isMeat ? FIELDS.on.label : 'Eggs by'}
            value={on}
            onChange={(date) => date && setOn(date)}
          />
          {goal === 'slot' ? (
            <QuantityInput
              field={FIELDS.head}
              units={asked.farm.units}
              value={head}
              onChange={setHead}
            />
          ) : (
            <Holidays asked={asked} on={on} onPick={setOn} />
          )}
        </Group>
        {'error' in found ? (
          <Alert color="stop">{found.error}</Alert>
        ) : (
          <Answer answer={found.answer} asked={asked} onPick={onPick} />
        )}
      </Stack>
    </Card>
  );
}

function Holidays({
  asked: { picture },
  on,
  onPick,
}: {
  asked: AskedBatch;
  on: string;
  onPick: (date: string) => void;
}) {
  const sayDate = useSayDate();
  const ahead = (picture.publicHolidays ?? []).filter(({ date }) => picture.today < date);
  if (ahead.length === 0) return null;
  return (
    <Select
      label="For a holiday"
      value={ahead.some(({ date }) => date === on) ? on : undefined}
      none="Another day"
      options={ahead.map(({ date, name }) => ({ id: date, name: `${name}, ${sayDate(date)}` }))}
      onChange={(date) => date && onPick(date)}
    />
  );
}

function Answer({
  answer,
  asked,
  onPick,
}: {
  answer: ReadyBy;
  asked: AskedBatch;
  onPick: (more: BatchDraft) => void;
}) {
  if (answer.none !== undefined)
    return (
      <Alert color="warn">
        {answer.none} <BetterSlot of={answer.betterSlot} />
      </Alert>
    );
  const arrivals = answer.arrivals.filter(({ isTooLate }) => !isTooLate);
  return (
    <>
      {answer.slot && (
        <Text>
          Wanted are <Num of={answer.slot.wanted} /> live. For that they come about{' '}
          <Num of={answer.slot.arrivals.best} />; from <Num of={answer.slot.arrivals.from} /> to{' '}
          <Num of={answer.slot.arrivals.to} /> they are near enough.{' '}
          <BetterSlot of={answer.betterSlot} />
        </Text>
      )}
      {answer.processBy && !answer.slot && (
        <Text>
          Process by <Num of={answer.processBy} />.
        </Text>
      )}
      {arrivals.map((arrival) => (
        <Arrival key={arrival.arrivalDate} {...{ arrival, answer, asked, onPick }} />
      ))}
      {answer.largest && (
        <Largest largest={answer.largest} on={arrivals[0]!.arrivalDate} onPick={onPick} />
      )}
    </>
  );
}

const BetterSlot = ({ of }: { of: ReadyBy['betterSlot'] }) =>
  of && (
    <>
      A slot about <Num of={of} /> would suit better.
    </>
  );

/** What a slot that is booked makes of a batch, beside its arrival. */
const slotOf = ({ goal, on, head }: ReadyBy): BatchDraft =>
  goal === 'slot'
    ? {
        ...NOT_AT_HOME,
        ...{ processing: 'hired', slotDate: on, slotBirds: head, leaveAgeDays: undefined },
        ...(head === undefined ? {} : { wantedBirds: head }),
      }
    : NO_SLOT;

function Arrival({
  arrival,
  answer,
  asked: { batch, tables },
  onPick,
}: {
  arrival: ReadyArrival;
  answer: ReadyBy;
  asked: AskedBatch;
  onPick: (more: BatchDraft) => void;
}) {
  const sayDate = useSayDate();
  const { arrivalDate, endDate, leaveAgeDays, liveEach, stops, orderBy, over } = arrival;
  const isSlot = answer.goal === 'slot';
  const { young } = birdWordsOf(tables, batch);
  const end =
    leaveAgeDays === undefined
      ? `first eggs about ${sayDate(endDate)}`
      : `processed ${sayDate(endDate)} at ${leaveAgeDays} days`;
  const isPlanned =
    batch.arrivalDate === arrivalDate &&
    (isSlot
      ? batch.slotDate === answer.on && batch.slotBirds === answer.head
      : batch.slotDate === undefined && (batch.leaveAgeDays ?? leaveAgeDays) === leaveAgeDays);
  return (
    <div>
      <Text>
        <b>
          {capital(young)} come {sayDate(arrivalDate)}
        </b>
        : {end}
        {liveEach && (
          <>
            , <Num of={liveEach} /> live
          </>
        )}
        {over && (
          <>
            {' '}
            (<Num of={over} /> against what is wanted)
          </>
        )}
        {orderBy && (
          <>
            , order by <Num of={orderBy} />
            {arrival.isLateToOrder && <b>, which is past</b>}
          </>
        )}
        . It is {weekInWords(arrival.score)}.
      </Text>
      {0 < stops.length && (
        <List size="sm" my={4}>
          {stops.map((reason) => (
            <List.Item key={reason.code + reason.text}>{reason.text}</List.Item>
          ))}
        </List>
      )}
      <Button
        mt={4}
        variant="light"
        disabled={isPlanned}
        onClick={() =>
          onPick({
            arrivalDate,
            ...slotOf(answer),
            ...(isSlot || leaveAgeDays === undefined
              ? {}
              : { leaveAgeDays, targetLiveKg: undefined, processingWeekday: undefined }),
          })
        }
      >
        {isPlanned ? 'Planned' : `Take ${sayDate(arrivalDate)}`}
      </Button>
    </div>
  );
}

/** How many there could be, and what stops more. */
function Largest({
  largest: { birds, limits },
  on,
  onPick,
}: {
  largest: LargestBatch;
  on: string;
  onPick: (more: BatchDraft) => void;
}) {
  const sayDate = useSayDate();
  const [tightest] = limits;
  return (
    <div>
      <Text mt="xs">
        <b>
          Largest batch that comes on {sayDate(on)}: <Num of={birds} />
        </b>
        . {tightest!.name} stops more. Birds that each has room for:
      </Text>
      <Facts>
        {limits.map(({ kind, name, chicks }) => (
          <Fact key={kind} of={chicks} label={name} />
        ))}
      </Facts>
      {0 < birds.value && (
        <Button mt={4} variant="light" onClick={() => onPick({ wantedBirds: birds.value })}>
          Plan {birds.value}
        </Button>
      )}
    </div>
  );
}

function ask(asked: AskedBatch, goal: ReadyGoal): { answer: ReadyBy } | { error: string } {
  try {
    return { answer: readyBy(asked.picture, asked.tables, asked.batch.id, goal) };
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const words = batchWords(asked.batch.purpose, asked.farm);
    return { error: Object.values(messagesByField(error.problems, words)).join(' ') };
  }
}
