import { dayOfYear, type PlainDate } from '../calendar/plain-date.js';
import type { AnimalPicture } from '../farm/picture.js';
import { isThere, milkedHead } from '../pasture/herd-demand.js';
import { withNamedCows } from '../pasture/named-cows.js';
import type { TaskTemplate } from '../tables/task-template.js';
import { rowById, type Tables } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import type { ChoreHours } from './request.js';
import { hoursOf } from './tasks/task-hours.js';

interface Span {
  readonly from: PlainDate;
  /** The first day that no longer has them. */
  readonly to: PlainDate;
  readonly hours: number;
}

/**
 * Hours of daily care that a batch asks for on a date, by its templates: in the brooder, out of it,
 * and with hens in lay. Known before its days of processing are, which hang on the chores of others:
 * it goes on to the last day planned by age.
 */
export function careOf(context: PlanContext): ChoreHours {
  let spans = known.get(context.life);
  if (!spans) known.set(context.life, (spans = spansOf(context)));
  const all = spans;
  return (date) =>
    all.reduce((sum, { from, to, hours }) => (from <= date && date < to ? sum + hours : sum), 0);
}

const known = new WeakMap<PlanContext['life'], readonly Span[]>();

function spansOf(context: PlanContext): Span[] {
  const { batch, life, moveOutDay, dateOf, tables } = context;
  const eggDay =
    life.firstEggAgeDays === undefined ? undefined : life.firstEggAgeDays - life.arrivalAgeDays;
  const days: Partial<Record<TaskTemplate['event'], number | undefined>> = {
    arrival: 0,
    'move-out': moveOutDay,
    'first-egg': eggDay,
    processing: batch.purpose === 'meat' ? life.days - 1 : undefined,
  };
  return tables.taskTemplates
    .filter(
      (t) =>
        t.isDaily &&
        !t.onDemand &&
        t.onlyIf === undefined &&
        (t.purpose === undefined || t.purpose === batch.purpose) &&
        (t.origins === undefined || t.origins.includes(batch.origin ?? 'hatchery')),
    )
    .flatMap((t) => {
      const day = days[t.event];
      const until = t.until && days[t.until];
      const from = day === undefined ? undefined : day + t.offsetDays;
      const to = until ?? (from === undefined ? undefined : from + (t.lengthDays ?? 0));
      return from === undefined || to === undefined
        ? []
        : [{ from: dateOf(from), to: dateOf(to), hours: hoursOf(t, life.placed).hours }];
    });
}

const CHECK = 'turn-out.daily-check-count-water-fence-volts-feet';
const HAY = 'turn-out.keep-offering-hay-while-dung-firms-up';

/**
 * Hours of the daily look at herds, of milking, and of hay on days on which the usual air is too cold
 * for grass, or all year where there is no paddock. Known before the season on grass is planned.
 */
export function herdChores(picture: AnimalPicture, tables: Tables): ChoreHours {
  const { herds, cows } = picture;
  if (herds.length === 0) return () => 0;
  const named = herds.map((herd) => withNamedCows(herd, cows));
  const row = rowById(tables.herdTaskTemplates, CHECK);
  const hay = rowById(tables.herdTaskTemplates, HAY);
  const isHayFed = hayDays(picture, tables);
  const { timesADay, hoursEachTime, hoursEachCow } = tables.work.milking;
  return (date) =>
    named.reduce((sum, herd) => {
      const head = herd.groups.reduce((n, group) => n + (isThere(group, date) ? group.head : 0), 0);
      const milked = milkedHead(herd, date, tables);
      return (
        sum +
        (head === 0 ? 0 : hoursOf(row, head).hours) +
        (head === 0 || !isHayFed(date) ? 0 : hoursOf(hay, head).hours) +
        (milked === 0 ? 0 : timesADay * (hoursEachTime + hoursEachCow * milked))
      );
    }, 0);
}

function hayDays(
  { paddocks, climate }: AnimalPicture,
  { judgements }: Tables,
): (date: PlainDate) => boolean {
  if (paddocks.length === 0) return () => true;
  const { value } = judgements.work.hayBelowC;
  return (date) => {
    const day = dayOfYear(date) - 1;
    return (climate.meanMinC[day]! + climate.meanMaxC[day]!) / 2 < value;
  };
}

/** Hours of chores on a day among those on which a batch might be processed: its own and all others. */
export function choreHoursOn(
  context: Pick<PlanContext, 'choresOfOthers'> & Partial<PlanContext>,
  date: PlainDate,
): number {
  const own = isPlanned(context) && context.batch.purpose === 'meat' ? careOf(context)(date) : 0;
  return own + (context.choresOfOthers?.(date) ?? 0);
}

const isPlanned = (context: Partial<PlanContext>): context is PlanContext =>
  context.life !== undefined;
