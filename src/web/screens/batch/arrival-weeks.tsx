import './batch.css';
import { Alert, Button, Card, Group, List, Stack, Text, Title } from '@mantine/core';
import { useMemo, useRef, useState } from 'react';
import { addDays, monthOf, yearOf } from '../../../../shared/calendar/plain-date.js';
import { MONTHS } from '../../../../shared/farm/field.js';
import { findArrivals, type ArrivalWeek, scoreOf } from '../../../../shared/plan/arrival-finder.js';
import { gradeOf, weekInWords } from '../../../../shared/plan/week-in-words.js';
import { FieldError } from '../../../../shared/problems/field-problem.js';
import { formatMonthDay } from '../../../../shared/units/dates.js';
import { Num } from '../../explain/number.js';
import { useOpener } from '../../explain/explain-panel.js';
import { DateField } from '../../fields/date-input.js';
import { messagesByField } from '../../fields/field-words.js';
import { Select } from '../../fields/select.js';
import type { AskedBatch, BatchDraft } from './use-plan.js';
import { batchWords, WEEKDAY_CHOICES } from './batch-labels.js';
import { ReadyByCard } from './ready-by.js';

/** Post comes from Monday to Saturday. */
const DELIVERY_DAYS = WEEKDAY_CHOICES.slice(0, 6);

/** The year as a strip of candidate weeks, graded, each with its reasons. */
export function ArrivalWeeks({
  asked,
  onPick,
}: {
  asked: AskedBatch;
  onPick: (more: BatchDraft) => void;
}) {
  const { reader, sayDate } = useOpener();
  const [from, setFrom] = useState(() => addDays(asked.picture.today, 14));
  const [to, setTo] = useState(() => addDays(asked.picture.today, 14 + 364));
  const [weekday, setWeekday] = useState('3');
  const [chosen, setChosen] = useState<string>();
  const reasonsRef = useRef<HTMLDivElement>(null);
  const found = useMemo(
    () => search(asked, { from, to, weekday: Number(weekday) }),
    [asked, from, to, weekday],
  );
  const weeks = 'weeks' in found ? found.weeks : [];
  const best = weeks.find((w) => w.rank === 1);
  const shown = weeks.find((w) => w.arrivalDate === chosen) ?? best;
  // A start takes the soonest of these: few points between weeks are no reason to wait.
  const { soonerWithin } = asked.tables.judgements.arrival;
  const isAsGood = ({ score }: ArrivalWeek): boolean =>
    best !== undefined && best.score - soonerWithin.value <= score;
  const shortDate = (week: { arrivalDate: string }): string =>
    formatMonthDay(week.arrivalDate.slice(5), reader);
  return (
    <Stack>
      <Group align="end">
        <DateField label="From" value={from} onChange={(d) => d && setFrom(d)} />
        <DateField label="To" value={to} onChange={(d) => d && setTo(d)} />
        <Select
          label="Delivery weekday"
          value={weekday}
          onChange={(v) => v && setWeekday(v)}
          options={DELIVERY_DAYS}
        />
      </Group>
      {'error' in found && <Alert color="stop">{found.error}</Alert>}
      <Text size="sm">
        Each square is a week and how well it suits, ★ the best. Press one to see why.
      </Text>
      <div className="months">
        {months(weeks).map(([month, inMonth]) => (
          <div key={month}>
            <Title order={3} size="h5" mb={4}>
              {month}
            </Title>
            <ul className="weeks">
              {inMonth.map((week) => (
                <li key={week.arrivalDate}>
                  <button
                    type="button"
                    className={`week grade-${Math.min(4, Math.floor(week.score / 20))}${week.rank === 1 ? ' best' : ''}`}
                    aria-pressed={week === shown}
                    aria-label={`${shortDate(week)} ${gradeOf(week.score)}${week.rank === 1 ? ', the best' : ''}`}
                    onClick={() => {
                      setChosen(week.arrivalDate);
                      reasonsRef.current?.scrollIntoView({ block: 'nearest', behavior: 'smooth' });
                    }}
                  >
                    {shortDate(week)} <b>{gradeOf(week.score)}</b>
                  </button>
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
      {shown && (
        <Card withBorder component="section" aria-live="polite" ref={reasonsRef}>
          <Title order={3} size="h3">
            {sayDate(shown.arrivalDate)}:{' '}
            <Num
              of={scoreOf(shown, asked.tables)}
              said={
                shown.rank === 1
                  ? 'the best week'
                  : isAsGood(shown)
                    ? 'about as good as the best week'
                    : weekInWords(shown.score)
              }
            />
          </Title>
          <Reasons title="Against it, most first" reasons={reasonsOf(shown, 'against')} />
          <Reasons title="For it" reasons={reasonsOf(shown, 'for')} />
          {shown.rank !== 1 && best && !isAsGood(shown) && (
            <Text mb="sm">
              <b>Why not this week?</b> Less speaks against {sayDate(best.arrivalDate)}
              {gradeOf(best.score) === gradeOf(shown.score) ? ', but not by much' : ''}.
            </Text>
          )}
          <Button
            onClick={() => onPick({ arrivalDate: shown.arrivalDate })}
            disabled={shown.arrivalDate === asked.batch.arrivalDate}
          >
            {shown.arrivalDate === asked.batch.arrivalDate
              ? 'This is the planned date'
              : `Plan for ${sayDate(shown.arrivalDate)}`}
          </Button>
        </Card>
      )}
      <ReadyByCard asked={asked} weekday={Number(weekday)} onPick={onPick} />
    </Stack>
  );
}

/** What takes points off a week, most first, or what takes none off it. */
const reasonsOf = ({ reasons }: ArrivalWeek, side: 'for' | 'against'): ArrivalWeek['reasons'] =>
  side === 'for'
    ? reasons.filter(({ points }) => points <= 0)
    : reasons.filter(({ points }) => 0 < points).sort((a, b) => b.points - a.points);

function Reasons({ title, reasons }: { title: string; reasons: ArrivalWeek['reasons'] }) {
  if (reasons.length === 0) return null;
  return (
    <>
      <Title order={4} size="h5" mt="sm">
        {title}
      </Title>
      <List mb="sm">
        {reasons.map((reason) => (
          <List.Item key={reason.code + reason.text}>{reason.text}</List.Item>
        ))}
      </List>
    </>
  );
}

function search(
  asked: AskedBatch,
  span: { from: string; to: string; weekday: number },
): { weeks: readonly ArrivalWeek[] } | { error: string } {
  try {
    return { weeks: findArrivals(asked.picture, asked.tables, asked.batch.id, span) };
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const words = batchWords(asked.batch.purpose, asked.farm);
    return { error: Object.values(messagesByField(error.problems, words)).join(' ') };
  }
}

function months(weeks: readonly ArrivalWeek[]): [string, ArrivalWeek[]][] {
  const byMonth = new Map<string, ArrivalWeek[]>();
  for (const week of weeks) {
    const month = `${MONTHS[monthOf(week.arrivalDate) - 1]} ${yearOf(week.arrivalDate)}`;
    byMonth.set(month, [...(byMonth.get(month) ?? []), week]);
  }
  return [...byMonth];
}
