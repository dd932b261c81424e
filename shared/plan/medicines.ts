import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture } from '../farm/picture.js';
import { DAYS_OF, isKeptOut, keptOutUntil, type KeptOut, type Treatment } from '../farm/treated.js';
import { formatDate } from '../units/dates.js';

/** A medicine that may still be in them. */
export interface MedicineToday {
  readonly said: string;
  /** What is kept out today. */
  readonly keptOut: readonly KeptOut[];
}

/** What an animal gives that somebody eats, and of which a label can have forgotten to be told. */
export interface Gives {
  readonly milk?: boolean;
  readonly eggs?: boolean;
}

/** Medicines of a batch or herd that are waited for today, as its line says them. */
export const medicinesToday = (
  picture: Pick<FarmPicture, 'treatments' | 'cows' | 'cattleLeft' | 'farm' | 'today'>,
  id: string,
  gives: Gives,
): MedicineToday[] =>
  (picture.treatments ?? [])
    .filter((treatment) => isIn(treatment, picture) === id)
    .flatMap((treatment) => {
      const keptOut = keptOutOn(treatment, picture.today, gives);
      return keptOut.length === 0 ? [] : [{ said: sayKept(picture, treatment, keptOut), keptOut }];
    });

/** Something of an animal that is kept out, and the last day of it. */
export interface Waited {
  readonly what: KeptOut;
  /** Left out where a label's days were never told: then nobody knows when it is over. */
  readonly until?: PlainDate;
}

/** What is kept out of a batch or herd today, and through which day by all that it was ever given. */
export function waitedToday(
  picture: Pick<FarmPicture, 'treatments' | 'cows' | 'cattleLeft' | 'today'>,
  id: string,
  gives: Gives,
): Waited[] {
  const given = (picture.treatments ?? []).filter((each) => isIn(each, picture) === id);
  const out = new Set(given.flatMap((each) => keptOutOn(each, picture.today, gives)));
  return [...out].map((what) => {
    const isTold = given.every((each) => each[DAYS_OF[what]] !== undefined);
    const until = given.flatMap((each) => keptOutUntil(each, what) ?? []).toSorted();
    return { what, ...(isTold && 0 < until.length ? { until: until.at(-1)! } : {}) };
  });
}

/**
 * The batch or herd that a treated animal is in now: a named cow takes her days along, and none has
 * them once she is gone. Where only her name was taken away she still stands in the treated herd.
 */
export function isIn(
  { about, cowId, wentAlong = false }: Treatment,
  { cows, cattleLeft = [] }: Pick<FarmPicture, 'cows' | 'cattleLeft'>,
): string | undefined {
  if (cowId === undefined) return about;
  const isGone = wentAlong || cattleLeft.some(({ details }) => details.cowId === cowId);
  return cows.find(({ id }) => id === cowId)?.herdId ?? (isGone ? undefined : about);
}

/**
 * The last day on which milk or eggs that an animal gives are kept out. Days that nobody told are not
 * known to be over while those of the meat run.
 */
export function outUntil(treatment: Treatment, what: 'milk' | 'eggs'): PlainDate | undefined {
  const days = treatment[what === 'milk' ? 'milkDays' : 'eggDays'];
  if (days !== undefined) return keptOutUntil(treatment, what);
  return addDays(treatment.date, Math.max(treatment.meatDays, UNTOLD_DAYS));
}

/** What is kept out on a day. */
export function keptOutOn(treatment: Treatment, on: PlainDate, gives: Gives): KeptOut[] {
  const isOpen = (what: 'milk' | 'eggs'): boolean =>
    gives[what] === true && on <= (outUntil(treatment, what) ?? '');
  return [
    ...(isKeptOut(treatment, 'milk', on) || isOpen('milk') ? (['milk'] as const) : []),
    ...(isKeptOut(treatment, 'eggs', on) || isOpen('eggs') ? (['eggs'] as const) : []),
    ...(isKeptOut(treatment, 'meat', on) ? (['meat'] as const) : []),
  ];
}

/** For so long it is asked for days that were not told. Judgement, no source. */
const UNTOLD_DAYS = 30;

export function sayKept(
  { cows, farm, today }: Pick<FarmPicture, 'cows' | 'farm' | 'today'>,
  treatment: Treatment,
  keptOut: readonly KeptOut[],
): string {
  const day = (date: PlainDate): string => formatDate(date, { units: farm.units, today });
  const parts = keptOut.map((what) => {
    const until = keptOutUntil(treatment, what);
    return until === undefined
      ? `no ${what} until its days on the label are told`
      : `no ${what} through ${day(until)}`;
  });
  const whom = whoOf(treatment, cows);
  return `${capital(parts.join(', '))}: ${treatment.product}, given ${day(treatment.date)}${whom === undefined ? '' : ` to ${whom}`}`;
}

function whoOf(
  { cowId, head, wentAlong = false }: Treatment,
  cows: FarmPicture['cows'],
): string | undefined {
  const name = cows.find(({ id }) => id === cowId)?.name;
  if (name === undefined) return head === undefined ? undefined : `${head} of them`;
  // She stood among them then: nobody said which ones had it.
  if (!wentAlong || head === undefined) return name;
  return head === 1 ? `one that may be ${name}` : `${head} of which ${name} may be one`;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
