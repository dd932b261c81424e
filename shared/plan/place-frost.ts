import type { FarmPicture } from '../farm/picture.js';
import type { Tables } from '../tables/tables.js';
import { frostDates } from '../weather/frost.js';
import type { RecordedFrost } from '../weather/recorded-frost.js';
import { frostYear, movedBy, ownDayApart, type FrostYear } from '../weather/frost-year.js';
import { nightsOfPlace } from './expected-nights.js';

type Place = Pick<FarmPicture, 'farm' | 'climate'>;

/** When frost ends and begins at a place, at one low. */
export interface PlaceFrost extends FrostYear {
  /** What the dates rest on. */
  readonly basis: 'record' | 'nights';
  /** Springs of the record, and those in which it was as cold as that. */
  readonly springs?: { readonly all: number; readonly withFrost: number };
}

/**
 * The frost dates of a farm, wherever they are shown: of its daily record where that is long enough,
 * as its spread is real; else by the chance of one night after the other, moved so far that frost
 * ends and begins on the dates the household knows.
 *
 * @param atOrBelowC lows that count; those that the household's own dates are of when left out
 */
export function placeFrost(
  place: Place,
  tables: Tables,
  atOrBelowC: number = tables.judgements.work.ownFrostC.value,
): PlaceFrost {
  const recorded = place.climate.recordedFrost;
  const years = recorded ? Math.min(recorded.springs.length, recorded.autumns.length) : 0;
  return recorded && tables.judgements.work.fewestYears.value <= years
    ? ofRecord(recorded, place, tables, atOrBelowC)
    : ofNights(place, tables, atOrBelowC);
}

/**
 * Month and day on which frost ends and begins, of the kind of date that the household typed: a
 * usual year's, or one that is safe in most. Where nights say nothing, the date typed.
 */
export function frostDays(place: Place, tables: Tables): { last: string; first: string } {
  const { farm } = place;
  const { frostDatesAre: kind = 'usual' } = farm;
  const { last, first } = placeFrost(place, tables);
  return { last: last?.[kind] ?? farm.lastFrost, first: first?.[kind] ?? farm.firstFrost };
}

function ofRecord(
  recorded: RecordedFrost,
  { farm: { latitudeDeg } }: Place,
  { judgements }: Tables,
  thresholdC: number,
): PlaceFrost {
  const sureShare = judgements.work.sureShare.value;
  const dates = frostDates(recorded, { thresholdC, latitudeDeg, sureShare });
  const { lastSpring, firstAutumn, springs, springsWithFrost } = dates;
  return {
    basis: 'record',
    springs: { all: springs, withFrost: springsWithFrost },
    ...(lastSpring ? { last: { usual: lastSpring.half, safe: lastSpring.ninetieth } } : {}),
    ...(firstAutumn ? { first: { usual: firstAutumn.half, safe: firstAutumn.tenth } } : {}),
  };
}

function ofNights({ farm, climate }: Place, tables: Tables, atOrBelowC: number): PlaceFrost {
  const { ownFrostC, sureShare } = tables.judgements.work;
  const nights = nightsOfPlace(climate, farm, tables);
  const at = (low: number): FrostYear =>
    frostYear(nights, {
      atOrBelowC: low,
      fewShare: 1 - sureShare.value,
      likeness: tables.nights.likeness.value,
    });
  const isSafe = farm.frostDatesAre === 'safe';
  const own = at(ownFrostC.value);
  const asked = atOrBelowC === ownFrostC.value ? own : at(atOrBelowC);
  const moved = (which: 'last' | 'first', day: string) => {
    const turn = asked[which];
    if (turn === undefined) return {};
    // A harder frost is as far from the household's day as the nights have it.
    const days = own[which] ? ownDayApart(own[which], day, isSafe) : 0;
    return { [which]: movedBy(turn, days) };
  };
  return { basis: 'nights', ...moved('last', farm.lastFrost), ...moved('first', farm.firstFrost) };
}
