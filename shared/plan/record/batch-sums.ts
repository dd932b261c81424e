import type { PlainDate } from '../../calendar/plain-date.js';
import { holding, type FactOf, type ToldFact, type ToldKind } from '../../farm/told-fact.js';

/** A weight of several birds, and of how many it is. */
export interface WeightOf {
  readonly birds: number;
  readonly kg: number;
}

/** What was told of a batch, added up. Left out is what nobody told. */
export interface BatchSums {
  /** The day on which they came, and those that were alive. */
  readonly arrived?: { readonly on: PlainDate; readonly alive: number };
  readonly died: number;
  readonly processed: number;
  readonly sold: number;
  readonly given: number;
  /** Weights at processing, of the birds whose weight was told. */
  readonly live?: WeightOf;
  readonly dressed?: WeightOf;
  readonly packs?: number;
  readonly lastProcessedOn?: PlainDate;
  readonly saidLastOn?: PlainDate;
  readonly opened: readonly FactOf<'feed-opened'>[];
  readonly counts: readonly FactOf<'eggs-counted'>[];
  /** Hours that were logged of its work, and what the same work had been reckoned at. */
  readonly hours?: { readonly logged: number; readonly reckoned: number; readonly times: number };
}

/** Adds up what was told of a batch; what was taken back or changed does not count. */
export function sumsOf(batchId: string, facts: readonly ToldFact[]): BatchSums {
  const held = holding(facts);
  const of = <Kind extends ToldKind>(kind: Kind): FactOf<Kind>[] =>
    held.filter((fact): fact is FactOf<Kind> => fact.kind === kind && fact.about === batchId);
  const arrival = of('arrived').at(-1);
  const processed = of('processed');
  const gone = of('gone');
  const packs = processed.flatMap(({ details }) => details.packs ?? []);
  const lastProcessedOn = processed
    .map(({ on }) => on)
    .sort()
    .at(-1);
  const saidLastOn = gone.find(({ details }) => details.isLast)?.on;
  const hours = hoursOf(batchId, held);
  const went = (how: 'sold' | 'given'): number =>
    total(gone.filter(({ details }) => details.how === how).map(({ details }) => details.birds));
  const live = weighed(processed, 'liveKg');
  const dressed = weighed(processed, 'dressedKg');
  return {
    ...(arrival
      ? {
          arrived: {
            on: arrival.on,
            alive: arrival.details.birds - (arrival.details.dead ?? 0),
          },
        }
      : {}),
    died: total(of('died').map(({ details }) => details.birds)),
    processed: total(processed.map(({ details }) => details.birds)),
    sold: went('sold'),
    given: went('given'),
    ...(live ? { live } : {}),
    ...(dressed ? { dressed } : {}),
    ...(packs.length === 0 ? {} : { packs: total(packs) }),
    ...(lastProcessedOn === undefined ? {} : { lastProcessedOn }),
    ...(saidLastOn === undefined ? {} : { saidLastOn }),
    opened: of('feed-opened'),
    counts: of('eggs-counted'),
    ...(hours ? { hours } : {}),
  };
}

/**
 * Birds of a batch alive at the end of a day, by what was told, as a function of the day: what was
 * told is gone through once, however many days are asked for.
 *
 * @param placed birds there were at first where nobody told how many came
 */
export function aliveByTold(
  batchId: string,
  facts: readonly ToldFact[],
  placed: number,
): (on: PlainDate) => number {
  const held = holding(facts).filter(({ about }) => about === batchId);
  const arrived = held.findLast((fact) => fact.kind === 'arrived');
  const first = arrived ? arrived.details.birds - (arrived.details.dead ?? 0) : placed;
  const leaving = held
    .flatMap(({ kind, on, details }) =>
      kind === 'died' || kind === 'processed' || kind === 'gone'
        ? [{ on, birds: details.birds }]
        : [],
    )
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  let left = first;
  const after = leaving.map(({ on, birds }) => ({ on, left: (left -= birds) }));
  return (on) => Math.max(0, after.findLast((each) => each.on <= on)?.left ?? first);
}

/** Hours logged of work of the batch whose reckoned hours are known, so that like stands by like. */
function hoursOf(batchId: string, held: readonly ToldFact[]): BatchSums['hours'] {
  const logged = held.flatMap((fact) =>
    fact.kind === 'work-progress' &&
    fact.about.startsWith(`batch/${batchId}/`) &&
    fact.details.hours !== undefined &&
    fact.details.reckonedHours !== undefined
      ? [{ logged: fact.details.hours, reckoned: fact.details.reckonedHours }]
      : [],
  );
  return logged.length === 0
    ? undefined
    : {
        logged: total(logged.map((each) => each.logged)),
        reckoned: total(logged.map((each) => each.reckoned)),
        times: logged.length,
      };
}

function weighed(
  processed: readonly FactOf<'processed'>[],
  which: 'liveKg' | 'dressedKg',
): WeightOf | undefined {
  const told = processed.flatMap(({ details }) => {
    const kg = details[which];
    return kg === undefined ? [] : [{ birds: details.birds, kg }];
  });
  return told.length === 0
    ? undefined
    : { birds: total(told.map(({ birds }) => birds)), kg: total(told.map(({ kg }) => kg)) };
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);
