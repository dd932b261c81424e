import { Fragment, memo } from 'react';
import { Link } from 'wouter';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import type { YearBar, YearDate, YearRow } from '../../../../shared/plan/year/year-row.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import { isOver } from '../../../../shared/plan/work/full-weeks.js';
import type { YearWeek } from '../../../../shared/plan/year/year-weeks.js';
import { formatDayWithoutWeekday } from '../../../../shared/units/dates.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { unbroken } from '../../explain/unbroken.js';
import { isOn } from './strip-place.js';
import { areHoursKnown } from './hours-row.js';
import { BAR_WORDS, hrefOf, overInWords } from './year-words.js';

/** All that the strip shows, in words: to read, to have read aloud, and to hang on the wall. */
export const YearDates = memo(function YearDates({ year, base }: { year: YearPlan; base: string }) {
  const { rows, span, weather, weeks, unplanned } = year;
  return (
    <dl className="year-dates">
      <div>
        <dt>Frost</dt>
        <dd>
          <TurnsInWords turns={weather.turns} none="No frost to reckon with." />
        </dd>
      </div>
      {0 < weather.garden.length && (
        <div>
          <dt>Garden and hives</dt>
          <dd>
            <TurnsInWords turns={weather.garden} />
          </dd>
        </div>
      )}
      <DatesOfRows rows={rows} span={span} base={base} />
      <div className="year-fits">
        <dt>Hours</dt>
        <dd>
          <HoursInWords weeks={weeks} base={base} />
        </dd>
      </div>
      {0 < unplanned.length && (
        <div>
          <dt>Not on the strip</dt>
          <dd>{unplanned.join(', ')}: no plan can be made of it yet.</dd>
        </div>
      )}
    </dl>
  );
});

/** Days of the weather and what the ground and the hives do by it. */
export function TurnsInWords({ turns, none }: { turns: readonly Quantity[]; none?: string }) {
  if (turns.length === 0) return none;
  return turns.map((turn) => (
    <span key={`${turn.label} ${turn.value}`} className="year-date">
      {turn.label} <Num of={turn} />
    </span>
  ));
}

/** Each row of the strip with its dates. */
export const DatesOfRows = ({
  rows,
  span,
  base,
}: {
  rows: readonly YearRow[];
  span: YearSpan;
  base: string;
}) =>
  rows
    .filter((row) => hasSomething(row, span))
    .map((row) => (
      <div key={`${row.kind} ${row.id}`} className={`year-dates-${row.kind}`}>
        <dt>
          <Link href={hrefOf(base, row)}>{row.name}</Link>
        </dt>
        <dd>
          <RowDates row={row} span={span} />
        </dd>
      </div>
    ));

/** Hens that lay all year long have no date, nor feed where another batch fetches it. */
const hasSomething = ({ kind, dates, feed = [] }: YearRow, span: YearSpan): boolean =>
  kind === 'herd' || [...dates, ...feed].some(({ on }) => isOn(span, on));

/** Weeks that ask for more than there is, and weeks whose work would do in sum and does not fit. */
export function HoursInWords({ weeks, base }: { weeks: readonly YearWeek[]; base: string }) {
  const sayDate = useSayDate();
  if (!areHoursKnown(weeks))
    return 'Nobody has hours for the farm yet: add people and their hours to your place.';
  const over = weeks.filter(isOver);
  if (over.length === 0) return 'No week asks for more than fits.';
  return over.map((week) => (
    <span key={week.from} className="year-date">
      Week from {sayDate(week.from)}: {overInWords(week)}
      {week.unfitJobs.map(({ key, words }, k) => (
        <Fragment key={key}>
          {(0 < k || overInWords(week) !== '') && '; '}
          <Link href={`${base}/work`}>{words}</Link>
        </Fragment>
      ))}
    </span>
  ));
}

/** Dates of a row within the strip; of a herd what it eats when as well, of birds feed to fetch. */
function RowDates({ row, span }: { row: YearRow; span: YearSpan }) {
  const stretches = row.kind === 'herd' ? eatenIn(row) : [];
  const starts = [...row.dates.map(({ on }) => on), ...stretches.map(({ from }) => from)];
  const say = useSayDay(span, starts);
  const sayFeed = useSayDay(span, row.feed?.map(({ on }) => on) ?? []);
  return (
    <>
      {repeated(row.dates, span).map(({ words, days, dueBy }) => (
        <span key={words} className="year-date">
          <b>{days.map(say).join(', ')}</b> {words}
          {dueBy !== undefined && `, due by ${say(dueBy)}`}
        </span>
      ))}
      {row.feed && (
        <span className="year-date year-feed">
          bags of feed to fetch:{' '}
          {repeated(row.feed, span).map(({ words, days }, k) => (
            <Fragment key={words}>
              {0 < k && '; '}
              <b>{days.map(sayFeed).join(', ')}</b> {unbroken(words)}
            </Fragment>
          ))}
        </span>
      )}
      {stretches.map(({ kind, from, until }) => (
        <span key={`${kind} ${from}`} className="year-date">
          {BAR_WORDS[kind]} {say(from)} to {say(addDays(until, -1))}
        </span>
      ))}
    </>
  );
}

/**
 * A day of the strip without its year, but in the last month, which is the first one again, and on the
 * first of a list that lies in the year after it began.
 */
function useSayDay({ from, until }: YearSpan, dates: readonly string[]): (date: string) => string {
  const { reader } = useOpener();
  const isAgain = (date: string): boolean => date.slice(5, 7) === from.slice(5, 7);
  const nextYear = `${Number(from.slice(0, 4)) + 1}-01-01`;
  const [turn] = dates.filter((date) => nextYear <= date && date < until).sort();
  return (date) =>
    unbroken(
      formatDayWithoutWeekday(
        date,
        until <= date || date === turn || (isAgain(date) && from.slice(0, 4) !== date.slice(0, 4))
          ? { ...reader, today: undefined }
          : { ...reader, today: date },
      ),
    );
}

/** Work that comes again (1 of 6, 2 of 6 …) as one, with all its days. */
function repeated(
  dates: readonly YearDate[],
  span: YearSpan,
): { words: string; days: string[]; dueBy?: string | undefined }[] {
  const byWords = new Map<string, YearDate[]>();
  for (const date of dates) {
    if (!isOn(span, date.on)) continue;
    const stem = date.words.replace(/, \d+ of \d+$/, '');
    byWords.set(stem, [...(byWords.get(stem) ?? []), date]);
  }
  return [...byWords].map(([words, all]) => ({
    words,
    days: all.map(({ on }) => on),
    dueBy: all[0]!.dueBy,
  }));
}

const EATEN: readonly YearBar['kind'][] = ['grass', 'hay'];
const WEEK = 7;

/** What a herd eats from when to when; a few days on hay between grass are not told. */
function eatenIn({ bars }: YearRow): YearBar[] {
  const long = bars
    .filter(({ kind }) => EATEN.includes(kind))
    .filter(({ kind, from, until }) => kind !== 'hay' || WEEK <= daysBetween(from, until))
    .sort((a, b) => (a.from < b.from ? -1 : 1));
  return long.reduce<YearBar[]>((told, bar) => {
    const last = told.at(-1);
    if (last?.kind !== bar.kind) return [...told, bar];
    return [...told.slice(0, -1), { ...last, until: bar.until }];
  }, []);
}
