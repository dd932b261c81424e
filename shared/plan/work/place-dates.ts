import { dateIn } from '../../calendar/month-day.js';
import { addDays, yearOf, type PlainDate } from '../../calendar/plain-date.js';
import type { WorkTable } from '../../tables/work-table.js';
import {
  SOIL_DAYS,
  usualWarmDay,
  warmDayIn,
  type Warmth,
  type WarmPlace,
} from '../../weather/warm-days.js';
import type { FrostTurn } from '../../weather/frost-year.js';
import { placeFrost } from '../place-frost.js';
import type { KeyDate } from '../tasks/event.js';
import { OF_PLACE } from './of-place.js';
import type { WorkRequest } from './work-request.js';

export type DatedPlace = Pick<WorkRequest, 'farm' | 'climate' | 'tables' | 'today'>;

/** A plan asks for the dates of its place more than once. */
const KNOWN = new WeakMap<DatedPlace['climate'], { key: string; events: KeyDate[] }>();

/**
 * Key dates of the place that own jobs can be tied to, of the year that is, the one before and the
 * two that follow: frosts, soil that is warm enough, hives that can be opened. Frosts are those of
 * the place wherever they are shown; the rest moves with the weather that is measured and forecast.
 */
export function placeKeyDates({ farm, climate, tables, today }: DatedPlace): KeyDate[] {
  const { lastFrost, firstFrost, frostDatesAre, latitudeDeg } = farm;
  const key = JSON.stringify([lastFrost, firstFrost, frostDatesAre, latitudeDeg, today]);
  const known = KNOWN.get(climate);
  if (known?.key === key) return known.events;
  const yearly = [
    ...frostsOf({ farm, climate, tables, today }),
    ...warmthsOf({ climate, latitudeDeg }, tables.work.keyDates),
  ];
  // A plan of the work goes to its last dated need, which can lie in the year after the next.
  const events = [-1, 0, 1, 2].flatMap((k) => {
    const year = yearOf(today) + k;
    return yearly.map(({ id, name, dateOf }): KeyDate => ({
      id: `${OF_PLACE}${id}-${year}`,
      name,
      date: dateOf(year),
    }));
  });
  KNOWN.set(climate, { key, events });
  return events;
}

/** A key date that comes every year. */
interface Yearly {
  readonly id: string;
  readonly name: string;
  readonly dateOf: (year: number) => PlainDate;
}

function frostsOf({ farm, climate, tables }: DatedPlace): Yearly[] {
  const own = farm.frostDatesAre === 'safe' ? SAFE : USUAL;
  const { bloom } = tables.work.keyDates;
  const place = { farm, climate };
  const { last, first } = placeFrost(place, tables);
  const bloomSafe = placeFrost(place, tables, bloom.atOrBelowC).last?.safe;
  const on = (id: string, name: string, day: string | undefined): Yearly[] =>
    day === undefined ? [] : [{ id, name, dateOf: (year) => dateIn(year, day) }];
  // What the household typed is of the kind that it says, and has the plain id.
  const frosts = (id: string, name: string, turn: FrostTurn | undefined, typed: string) =>
    [own, own === SAFE ? USUAL : SAFE].flatMap(({ kind, words }) =>
      on(
        kind === own.kind ? id : `${id}-${kind}`,
        `${name}, ${words}`,
        turn?.[kind] ?? (kind === own.kind ? typed : undefined),
      ),
    );
  return [
    ...frosts('last-frost', 'Last spring frost', last, farm.lastFrost),
    ...frosts('first-frost', 'First fall frost', first, farm.firstFrost),
    ...on('bloom-safe', `${bloom.name}, ${SAFE.words}`, bloomSafe),
  ];
}

const USUAL = { kind: 'usual', words: 'usual' } as const;
const SAFE = { kind: 'safe', words: 'nine years in ten' } as const;

function warmthsOf(
  place: WarmPlace,
  { soil, hivesOpen, swarming }: WorkTable['keyDates'],
): Yearly[] {
  const of = (id: string, name: string, warmth: Warmth): Yearly[] => {
    const usual = usualWarmDay(place, warmth);
    return usual === undefined
      ? []
      : [{ id, name, dateOf: (year) => warmDayIn(place, warmth, { usual, year }) }];
  };
  const { dayMaxC, daysInRow } = hivesOpen;
  const hives = of('hives-open', hivesOpen.name, { of: 'day', atLeastC: dayMaxC, daysInRow });
  return [
    ...soil.flatMap(({ id, name, atLeastC }) =>
      of(id, name, { of: 'soil', atLeastC, daysInRow: SOIL_DAYS }),
    ),
    ...hives,
    ...hives.map(({ dateOf }) => ({
      id: 'swarming',
      name: swarming.name,
      dateOf: (year: number) => addDays(dateOf(year), swarming.afterDays),
    })),
  ];
}
