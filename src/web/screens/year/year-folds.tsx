import { memo } from 'react';
import type { Quantity } from '../../../../shared/explain/quantity.js';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import { firstAhead, type YearRow } from '../../../../shared/plan/year/year-row.js';
import type { HalfMonth } from '../../../../shared/plan/year/year-weather.js';
import { isOver, overWeeksInWords } from '../../../../shared/plan/work/full-weeks.js';
import { formatDayWithoutWeekday } from '../../../../shared/units/dates.js';
import { useOpener } from '../../explain/explain-panel.js';
import { Num } from '../../explain/number.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { Folded } from '../../shell/folded.js';
import { areHoursKnown } from './hours-row.js';
import { sayColdLimit } from './cold-limit.js';
import { ofTen } from './weather-rows.js';
import { DatesOfRows, HoursInWords, TurnsInWords } from './year-dates.js';
import { GROUP_WORDS } from './year-words.js';

const KINDS = Object.keys(GROUP_WORDS) as YearRow['kind'][];

/** The dates of the strip in words, a group shut to the next of its dates. */
export const YearFolds = memo(function YearFolds({ year, base }: { year: YearPlan; base: string }) {
  const sayDate = useSayDate();
  const { rows, span, today, weather, weeks, unplanned } = year;
  const next = (turns: readonly Quantity[]): string | undefined => nextTurn(turns, today, sayDate);
  return (
    <>
      {0 < unplanned.length && (
        <p>Not on the strip: {unplanned.join(', ')}. No plan can be made of it yet.</p>
      )}
      {KINDS.map((kind) => ({ kind, own: rows.filter((row) => row.kind === kind) }))
        .filter(({ own }) => 0 < own.length)
        .map(({ kind, own }) => (
          <Folded
            key={kind}
            id={`dates-${kind}`}
            title={GROUP_WORDS[kind]}
            answer={nextOf(own, today, sayDate)}
          >
            <dl className="year-dates">
              <DatesOfRows rows={own} span={span} base={base} />
            </dl>
          </Folded>
        ))}
      <Folded id="dates-hours" title="Hours" answer={hoursInShort(year, sayDate)}>
        <HoursInWords weeks={weeks} base={base} />
      </Folded>
      <Folded
        id="dates-frost"
        title="Frost"
        answer={next(weather.turns) ?? 'No frost to reckon with'}
      >
        <TurnsInWords turns={weather.turns} none="No frost to reckon with." />
      </Folded>
      {0 < weather.garden.length && (
        <Folded id="dates-garden" title="Soil, bloom and bees" answer={next(weather.garden)}>
          <TurnsInWords turns={weather.garden} />
        </Folded>
      )}
      <YearOdds year={year} />
    </>
  );
});

function nextOf(rows: readonly YearRow[], today: string, sayDate: SayDate): string {
  const first = firstAhead({ rows, today });
  return first
    ? `Next: ${sayDate(first.date.on)} ${first.row.name}, ${first.date.words}`
    : 'No date ahead';
}

function nextTurn(turns: readonly Quantity[], today: string, sayDate: SayDate): string | undefined {
  const ahead = turns
    .map(({ label, value }) => ({ label, on: String(value) }))
    .filter(({ on }) => today <= on)
    .sort((a, b) => (a.on < b.on ? -1 : 1));
  return ahead[0] && `Next: ${ahead[0].label} ${sayDate(ahead[0].on)}`;
}

function hoursInShort({ weeks }: YearPlan, sayDate: SayDate): string {
  if (!areHoursKnown(weeks)) return 'Nobody has hours for the farm yet';
  const over = weeks.filter(isOver).map(({ from }) => from);
  return overWeeksInWords(over, sayDate);
}

/** The odds of every half month, each of which opens. */
function YearOdds({ year: { weather } }: { year: YearPlan }) {
  const { reader } = useOpener();
  return (
    <Folded
      id="odds"
      title="Odds by half month"
      answer="Nights too cold for birds just moved out, dry days in a row"
      isForScreen
    >
      <div className="year-all-odds">
        <OddsList
          title={`Nights ${sayColdLimit(weather.coldNights, reader)}, of 10: birds just out of the brooder need a roof, bedding and a tarp or heat on them`}
          halves={weather.coldNights}
          say={(half) => `${ofTen(half.of)} in 10`}
        />
        {weather.dryRuns && (
          <OddsList
            title={`${weather.dryRuns[0]!.of.label}, as hay needs`}
            halves={weather.dryRuns}
          />
        )}
      </div>
    </Folded>
  );
}

function OddsList({
  title,
  halves,
  say,
}: {
  title: string;
  halves: readonly HalfMonth[];
  say?: (half: HalfMonth) => string;
}) {
  const { reader } = useOpener();
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {halves.map((half) => (
          <li key={half.from}>
            From {formatDayWithoutWeekday(half.from, reader)}:{' '}
            <Num of={half.of} {...(say ? { said: say(half) } : {})} />
          </li>
        ))}
      </ul>
    </>
  );
}
