import './pasture.css';
import { addDays, daysBetween, monthOf } from '../../../../shared/calendar/plain-date.js';
import type { PaddockPart } from '../../../../shared/plan/pasture/paddock-part.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import { useSayDate } from '../../explain/say-date.js';

/** What a paddock is on a day, besides being grazed. */
type Standing = 'resting' | 'ready' | 'overdue' | 'shut' | 'short';

interface Run {
  readonly from: number;
  readonly days: number;
  readonly kind: Standing;
}

const ROW = 22;
const HERD_COLOURS = ['var(--series-2)', 'var(--series-1)', 'var(--series-4)', 'var(--series-3)'];
const FILL: Record<Standing, string> = {
  short: 'var(--shade)',
  resting: 'var(--grade-3)',
  ready: 'var(--grade-4)',
  overdue: 'var(--grade-1)',
  shut: 'var(--line)',
};
/** A line through these, so that they are told apart in gray as well: how thick. */
const LINED: Partial<Record<Standing, number>> = { overdue: 2, shut: 6 };
const WORDS: Record<Standing, string> = {
  short: 'below the residual',
  resting: 'resting',
  ready: 'ready',
  overdue: 'overdue: rank',
  shut: 'closed',
};
/** So many letters stand beside each other below a strip on a phone. */
const MOST_LETTERS = 18;
const MONTHS = ['J', 'F', 'M', 'A', 'M', 'J', 'J', 'A', 'S', 'O', 'N', 'D'];

/** The season, a row for each paddock and a column for each day: where the herds are. */
export function SeasonStrip({ plan }: { plan: PasturePlan }) {
  const sayDate = useSayDate();
  const days = daysBetween(plan.from, plan.to) + 1;
  const months = monthStarts(plan.from, days);
  const height = plan.paddocks.length * ROW;
  const today = daysBetween(plan.from, plan.today);
  return (
    <div className="season">
      <div className="season-names" aria-hidden>
        {plan.paddocks.map((p) => (
          <div key={p.id} style={{ height: ROW }}>
            {p.name}
          </div>
        ))}
      </div>
      <svg
        className="season-days"
        viewBox={`0 0 ${days} ${height}`}
        preserveAspectRatio="none"
        style={{ height }}
        role="img"
        aria-label={`Season from ${sayDate(plan.from)} to ${sayDate(plan.to)}: ${plan.moves.length} stays in ${plan.paddocks.length} paddocks. The same is listed under Moves.`}
      >
        {plan.paddocks.map((paddock, row) => (
          <g key={paddock.id} transform={`translate(0 ${row * ROW})`}>
            {runsOf(plan, paddock).map((run) => (
              <rect
                key={run.from}
                x={run.from}
                width={run.days}
                height={ROW - 2}
                fill={FILL[run.kind]}
              >
                <title>{`${paddock.name}, ${sayDate(addDays(plan.from, run.from))}: ${WORDS[run.kind]} for ${run.days} days`}</title>
              </rect>
            ))}
            {runsOf(plan, paddock)
              .filter(({ kind }) => kind in LINED)
              .map((run) => (
                <rect
                  key={run.from}
                  className="season-lined"
                  x={run.from}
                  width={run.days}
                  y={(ROW - 2) / 2 - 1}
                  height={LINED[run.kind]}
                />
              ))}
            {plan.moves
              .filter((move) => move.paddockId === paddock.id)
              .map((move) => (
                <rect
                  key={move.from}
                  x={daysBetween(plan.from, move.from)}
                  width={move.days}
                  height={ROW - 2}
                  fill={herdColor(plan, move.herdId)}
                >
                  <title>{`${herdName(plan, move.herdId)} in ${paddock.name}, ${sayDate(move.from)} to ${sayDate(move.to)}`}</title>
                </rect>
              ))}
          </g>
        ))}
        {months.map(({ at }) => (
          <line
            key={at}
            x1={at}
            x2={at}
            y1={0}
            y2={height}
            className="season-month-line"
            strokeWidth={0.25}
          />
        ))}
        {0 < today && today < days && (
          <line
            x1={today}
            x2={today}
            y1={0}
            y2={height}
            className="season-today"
            strokeWidth={0.8}
          />
        )}
      </svg>
      <div />
      <div className="season-months" aria-hidden>
        {months.map(({ at, month }) => (
          <span key={at} style={{ left: `${(100 * at) / days}%` }}>
            {MONTHS[month - 1]}
          </span>
        ))}
      </div>
      <ul className="season-key">
        {plan.herds.map((herd) => (
          <li key={herd.id}>
            <i style={{ background: herdColor(plan, herd.id) }} /> {herd.name}
          </li>
        ))}
        {(Object.keys(FILL) as Standing[]).map((kind) => (
          <li key={kind}>
            <i style={{ background: FILL[kind] }}>
              {kind in LINED && <b style={{ height: LINED[kind] }} />}
            </i>{' '}
            {WORDS[kind]}
          </li>
        ))}
      </ul>
    </div>
  );
}

export const herdName = (plan: PasturePlan, id: string): string =>
  plan.herds.find((herd) => herd.id === id)?.name ?? '';
export const paddockName = (plan: PasturePlan, id: string): string =>
  plan.paddocks.find((paddock) => paddock.id === id)?.name ?? '';

const herdColor = (plan: PasturePlan, id: string): string =>
  HERD_COLOURS[plan.herds.findIndex((herd) => herd.id === id) % HERD_COLOURS.length]!;

function monthStarts(from: string, days: number): { at: number; month: number }[] {
  const starts = [{ at: 0, month: monthOf(from) }];
  for (let at = 1; at < days; at++) {
    const date = addDays(from, at);
    if (date.endsWith('-01')) starts.push({ at, month: monthOf(date) });
  }
  // The letter of a month of a few days would lie on that of the next.
  return starts[1] && starts[1].at < days / MOST_LETTERS ? starts.slice(1) : starts;
}

/** Stretches of days on which a paddock stands the same. */
function runsOf(plan: PasturePlan, paddock: PaddockPart): Run[] {
  const runs: { from: number; days: number; kind: Standing }[] = [];
  paddock.massByDay.forEach((mass, day) => {
    const kind = standingOf(paddock, mass, addDays(plan.from, day));
    const last = runs.at(-1);
    if (last?.kind === kind) last.days++;
    else runs.push({ from: day, days: 1, kind });
  });
  return runs;
}

/** What a paddock is at a mass on a date. */
export function standingOf(paddock: PaddockPart, massKgPerHa: number, date: string): Standing {
  if (paddock.closedDays.some(({ from, to }) => from <= date && date <= to)) return 'shut';
  if (paddock.rankKgPerHa < massKgPerHa) return 'overdue';
  if (paddock.readyFromCm * paddock.perCm.value <= massKgPerHa) return 'ready';
  return massKgPerHa <= paddock.residualKgPerHa ? 'short' : 'resting';
}

export { FILL as STANDING_COLOURS, WORDS as STANDING_WORDS };
