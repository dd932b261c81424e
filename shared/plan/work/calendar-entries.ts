import type { PlainDate } from '../../calendar/plain-date.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { isGoneBy } from './gone-by.js';
import { isOfPlace } from './of-place.js';
import type { CareGap } from './care-gaps.js';
import type { PlannedJob, WorkPlan } from './planned-work.js';
import { formatDate } from '../../units/dates.js';
import { formatHours } from '../../units/format.js';
import type { UnitSystem } from '../../units/unit.js';

/** One day of a calendar: work, or an event that other work hangs on. */
export interface CalendarEntry {
  /** Stays what it is when the entry moves to another day. */
  readonly id: string;
  readonly date: PlainDate;
  readonly title: string;
  readonly text: string;
  /** Everyone's when left out. */
  readonly personIds?: readonly string[];
  /** It cannot slip: a reminder belongs to it. */
  readonly cannotSlip: boolean;
}

/**
 * A plan of the work as entries of a calendar. Ids come from the work and its place among its own pieces, so
 * that a new plan moves entries and doubles none.
 */
export function calendarEntries(
  plan: WorkPlan,
  units: UnitSystem,
  pasture?: Pick<PasturePlan, 'moves' | 'herds' | 'paddocks'>,
): CalendarEntry[] {
  const names = new Map(plan.people.map(({ id, name }) => [id, name]));
  return [
    // Of what can be done no more a day in a calendar would ask for hours again.
    ...plan.jobs
      .filter((job) => !isGoneBy(job))
      .flatMap((job) => entriesOf(job, names, { units, today: plan.today })),
    ...plan.careGaps.filter(({ kind }) => kind !== 'no-hours').map(careEntry),
    ...plan.events
      .filter((event) => !isOfPlace(event))
      .map(({ id, date, name }) => ({
        id,
        date,
        title: name,
        text: '',
        cannotSlip: true,
      })),
    ...(pasture ? movesOf(pasture, units) : []),
  ]
    .filter(({ date }) => plan.today <= date)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** Who is there is everybody's: it has no person of its own. */
const careEntry = ({ kind, from, of, said, ways }: CareGap): CalendarEntry => ({
  id: `care/${kind}/${of.join('/')}/${from}`,
  date: from,
  title:
    kind === 'nobody-there' ? `Nobody is there: ${of.join(', ')}` : `Out by day: ${of.join(', ')}`,
  text: [said, ...ways].join('\n'),
  cannotSlip: true,
});

function entriesOf(
  job: PlannedJob,
  names: ReadonlyMap<string, string>,
  { units, today }: { readonly units: UnitSystem; readonly today: PlainDate },
): CalendarEntry[] {
  const {
    key,
    name,
    belongsTo,
    pieces,
    why,
    whyPart,
    ifLate,
    priority,
    calendarSpareDays: spareDays,
    lateDays,
    waysToFit,
  } = job;
  // A phone shows the title and little more: what is late says so there.
  const late = 0 < lateDays ? `${lateDays} ${lateDays === 1 ? 'day' : 'days'} late: ` : '';
  const risk = ifLate === undefined ? [] : [`If not: ${ifLate}.`];
  if (pieces.length === 0) {
    return [
      {
        id: `${key}/1`,
        // What should have been done by now stands on today: a calendar shows no day that is past.
        date: job.alreadyLate ? today : job.latest,
        title: `No hours planned: ${name}${belongsTo ? ` · ${belongsTo.name}` : ''}`,
        text: [
          `${job.alreadyLate ? `Was due by ${formatDate(job.latest, { units, today })}` : 'Due today'}. ${why}`,
          ...waysToFit,
          ...risk,
        ].join('\n'),
        cannotSlip: priority === 'must',
      },
    ];
  }
  return pieces.map(({ date, hours, personIds }, k) => ({
    id: `${key}/${k + 1}`,
    date,
    title: `${late}${name}${belongsTo ? ` · ${belongsTo.name}` : ''} (${formatHours(hours)})`,
    text: [
      personIds.map((id) => names.get(id) ?? id).join(' and '),
      `Why then: ${why}`,
      ...(whyPart === undefined ? [] : [whyPart]),
      ...waysToFit,
      ...risk,
    ].join('\n'),
    personIds,
    cannotSlip: priority === 'must' && spareDays <= 0,
  }));
}

function movesOf(
  { moves, herds, paddocks }: Pick<PasturePlan, 'moves' | 'herds' | 'paddocks'>,
  units: UnitSystem,
): CalendarEntry[] {
  const paddock = new Map(paddocks.map(({ id, name }) => [id, name]));
  return herds.flatMap((herd) =>
    moves
      .filter(({ herdId }) => herdId === herd.id)
      .map(({ from, to, paddockId }, k) => ({
        id: `move/${herd.id}/${k + 1}`,
        date: from,
        title: `${herd.name} into ${paddock.get(paddockId) ?? paddockId}`,
        text: `They stay until ${formatDate(to, { units, today: from })}.`,
        cannotSlip: false,
      })),
  );
}
