import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import { firstAhead, type YearDate, type YearRow } from '../../../../shared/plan/year/year-row.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { useYear } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { useAll } from '../../shell/states.js';
import { useAfterDrawn } from '../../shell/use-after-drawn.js';
import { ArrivalHandle } from './arrival-handle.js';
import { ArrivalPanel } from './arrival-panel.js';
import type { Slid } from '../../../../shared/plan/year/slid-plan.js';
import { along } from './strip-place.js';
import { RowLines } from './strip-row.js';
import { YearFolds } from './year-folds.js';
import { YearKey } from './year-key.js';
import { YearStrip } from './year-strip.js';
import { hrefOf } from './year-words.js';
import './year.css';

/** The year on one page: what comes when, and arrivals that can be moved. */
export default function YearScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useYear(farm.id));
  if ('waiting' in all) return all.waiting;
  return <Year farm={farm} tables={tables} year={all.data[0]} />;
}

function Year({ farm, tables, year }: { farm: SavedFarm; tables: Tables; year: YearPlan }) {
  const base = `/farm/${farm.id}`;
  const { span, today } = year;
  const { slid, setSlid, planned, batch, plan } = useSlid(farm, tables);
  const canMove = year.rows.some(({ arrivesOn }) => arrivesOn !== undefined);
  const keepButton = useRef<HTMLButtonElement>(null);
  const next = firstAhead(year);
  const strip = useFromToday(span, today, next?.date.on ?? today, firstBar(year));
  // What was planned for a day that it was slid away from since goes in a moment, focus and all.
  const isPlanned = plan !== undefined && planned === slid;
  const [isToDecide, setToDecide] = useState(false);
  useEffect(() => {
    if (!isToDecide || !isPlanned) return;
    keepButton.current?.focus();
    setToDecide(false);
  }, [isToDecide, isPlanned]);
  const leave = useCallback(() => {
    if (slid) document.getElementById(handleId(slid.batchId))?.focus();
    setToDecide(false);
    setSlid(undefined);
  }, [slid, setSlid]);
  const linesOf = (row: YearRow) => {
    const { arrivesOn, id, name } = row;
    if (arrivesOn === undefined || span.until <= arrivesOn) return undefined;
    const own = slid?.batchId === id ? slid : undefined;
    const then = planned?.batchId === id && plan && 'row' in plan ? plan.row : undefined;
    const href = hrefOf(base, row);
    return (
      <>
        <RowLines row={row} span={span} href={href} as={then ? 'was' : 'is'} />
        {then && <RowLines row={then} span={span} href={href} as="then" />}
        <ArrivalHandle
          id={handleId(id)}
          name={name}
          span={span}
          today={today}
          saved={arrivesOn}
          date={own?.arrivalDate ?? arrivesOn}
          onMove={(arrivalDate) =>
            setSlid(arrivalDate === arrivesOn ? undefined : { batchId: id, arrivalDate })
          }
          onLeave={leave}
          onDecide={() => setToDecide(slid !== undefined)}
        />
      </>
    );
  };
  return (
    <div className="year">
      <header className="year-head">
        <h1>The year</h1>
        <p>
          {formatMonth(span.from)} to {formatMonth(addDays(span.until, -1))}.{' '}
          {canMove && (
            <span id="year-how-to-move" className="no-print">
              Move an arrival by its round mark: drag it
              <span className="year-by-keys">
                , or arrow keys by a day, with Shift by a week, and Enter to decide
              </span>
              .
            </span>
          )}
        </p>
        <Button component={Link} href={`${base}/year/print`} variant="default" className="no-print">
          Print for the wall
        </Button>
      </header>
      <NextThing next={next} work={year.nextWork} base={base} />
      {year.rows.length === 0 && (
        <p>
          Nothing stands in the year yet.{' '}
          <Button component={Link} href={`${base}/batches/new`}>
            Plan a batch
          </Button>
        </p>
      )}
      <section
        ref={strip}
        className="year-strip"
        aria-label="Thirteen months: all of its dates stand in the lists below"
        tabIndex={0}
      >
        <YearStrip year={year} base={base} linesOf={linesOf} />
      </section>
      {slid && planned && batch && plan && (
        <ArrivalPanel
          farm={farm}
          tables={tables}
          batch={batch}
          slid={planned}
          plan={plan}
          keepButton={keepButton}
          onDone={leave}
        />
      )}
      <YearKey year={year} />
      <YearFolds year={year} base={base} />
    </div>
  );
}

/** What comes first, in one line: the next date, and work that is planned before it. */
function NextThing({
  next,
  work,
  base,
}: {
  next: { row: YearRow; date: YearDate } | undefined;
  work: YearPlan['nextWork'];
  base: string;
}) {
  const sayDate = useSayDate();
  const isFirst = work !== undefined && (!next || work.on < next.date.on);
  if (!isFirst && !next) return null;
  return (
    <p className="year-next">
      Next:{' '}
      {isFirst && (
        <>
          <b>{sayDate(work.on)}</b> <Link href={`${base}/work/plan`}>{work.words}</Link>
        </>
      )}
      {isFirst && next && '; then '}
      {next && (
        <>
          <b>{sayDate(next.date.on)}</b>{' '}
          <Link href={hrefOf(base, next.row)}>
            {next.row.name}, {next.date.words}
          </Link>
          {next.date.dueBy !== undefined && `, due by ${sayDate(next.date.dueBy)}`}
        </>
      )}
    </p>
  );
}

const handleId = (batchId: string): string => `arrival-${batchId}`;

/** Where the first line begins that goes on to be seen: today of one that runs now. */
function firstBar({ rows, today, span }: YearPlan): string | undefined {
  const ahead = rows
    .flatMap(({ bars }) => bars)
    .filter(({ from, until }) => today < until && from < span.until)
    .map(({ from }) => (from < today ? today : from));
  return ahead.sort()[0];
}

/**
 * A strip too wide for its screen begins a little before today's line; where nothing is in sight
 * from there, with the first line that is drawn. No number of a day is cut by the names.
 */
function useFromToday(span: YearSpan, today: string, first: string, bar = first) {
  const ref = useRef<HTMLElement>(null);
  const [now, ahead, drawn] = [today, first, bar].map((day) => along(span, day) / 100) as [
    number,
    number,
    number,
  ];
  useLayoutEffect(() => {
    const names = ref.current?.querySelector('.year-name');
    if (!ref.current || !names) return;
    const track = ref.current.scrollWidth - names.clientWidth;
    const seen = ref.current.clientWidth - names.clientWidth;
    const fromToday = now * track - BEFORE_TODAY_PX;
    const isInSight = ahead * track < fromToday + seen - ROOM_FOR_WORDS_PX;
    ref.current.scrollLeft = Math.max(0, isInSight ? fromToday : drawn * track - seen / 4);
    const edge = names.getBoundingClientRect().right;
    const cut = [...ref.current.querySelectorAll('.year-turn, .year-months .year-track > span')]
      .map((turn) => turn.getBoundingClientRect())
      .filter(({ left, right }) => left < edge && edge < right)
      .map(({ left }) => edge - left);
    ref.current.scrollLeft -= Math.max(0, ...cut);
  }, [now, ahead, drawn]);
  return ref;
}
const BEFORE_TODAY_PX = 12;
const ROOM_FOR_WORDS_PX = 48;

/**
 * The arrival that is being moved, and the plan of its batch then. What it is planned from comes
 * once the strip stands, so that the strip does not wait for it.
 */

function useSlid(farm: SavedFarm, tables: Tables) {
  const [slid, setSlid] = useState<Slid>();
  // The mark goes with the hand at once; the plan of its day follows as fast as it can.
  const planned = useAfterDrawn(slid);
  const { data: picture } = usePicture(farm.id);
  const { data: core } = useQuery({
    queryKey: ['core of the year'],
    queryFn: () => import('../../../../shared/plan/year/slid-plan.js'),
    staleTime: Infinity,
  });
  const plan = useMemo(
    () => (planned && core && picture ? core.slidPlan({ picture, tables }, planned) : undefined),
    [planned, core, picture, tables],
  );
  const movedId = slid?.batchId;
  useEffect(() => {
    if (movedId !== undefined)
      document.getElementById(handleId(movedId))?.scrollIntoView({ block: 'nearest' });
  }, [movedId]);
  const batch = picture?.batches.find(({ id }) => id === planned?.batchId);
  return { slid, setSlid, planned, batch, plan };
}
