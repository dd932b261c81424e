import { datesFrom, dayOfYear } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import { fromShown, toShown } from '../../units/unit.js';
import type { Judgements } from '../../tables/judgements.js';
import type { DailyWeather } from '../../weather/climate.js';

/** Cold nights or hot days that are coming, from today on. */
export interface Spell {
  readonly kind: 'cold' | 'hot';
  /** Low of the nights, or high of the days. */
  readonly airC: number;
  /** 1 or more. */
  readonly days: number;
}

/**
 * The spell that is most worth asking about: as it is forecast for the next week, else a night or day
 * such as one in ten is, some in a row.
 */
export function spellAhead(
  { climate, today, farm }: FarmPicture,
  kind: Spell['kind'],
  { spellAheadDays, spellDays }: Judgements['alarms'],
): Spell {
  const doy = dayOfYear(today) - 1;
  const ahead = new Set(datesFrom(today, spellAheadDays.value));
  const known = (climate.forecast ?? []).filter(({ date }) => ahead.has(date));
  if (known.length === 0) {
    const airC = (kind === 'cold' ? climate.coldMinC : climate.hotMaxC)[doy]!;
    // Nobody says a guess in tenths of a degree.
    const said = Math.round(toShown(airC, 'degC', farm.units));
    return { kind, days: spellDays.value, airC: fromShown(said, 'degC', farm.units) };
  }
  const airC =
    kind === 'cold'
      ? Math.min(...known.map(({ minC }) => minC))
      : Math.max(...known.map(({ maxC }) => maxC));
  return { kind, days: Math.min(spellDays.value, known.length), airC };
}

/**
 * The forecast with the nights or days of a spell in it: the other end of such a day moves as far
 * from the usual as this one does; rain stays as it was.
 */
export function forecastWith({ climate, today }: FarmPicture, spell: Spell): DailyWeather[] {
  const known = new Map((climate.forecast ?? []).map((day) => [day.date, day]));
  // The low of a night falls on the morning after it.
  const dates = datesFrom(today, spell.kind === 'cold' ? spell.days + 1 : spell.days);
  for (const date of dates) {
    const doy = dayOfYear(date) - 1;
    const usual = { minC: climate.meanMinC[doy]!, maxC: climate.meanMaxC[doy]! };
    const was = known.get(date);
    const { minC, maxC } = spell.kind === 'cold' ? cold(spell, usual) : hot(spell, usual);
    const rainMm = was?.rainMm;
    known.set(date, { date, minC, maxC, ...(rainMm === undefined ? {} : { rainMm }) });
  }
  return [...known.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

type Ends = Pick<DailyWeather, 'minC' | 'maxC'>;

const cold = ({ airC }: Spell, { minC, maxC }: Ends): Ends => ({
  minC: airC,
  maxC: tenth(maxC + Math.min(0, airC - minC)),
});
const hot = ({ airC }: Spell, { minC, maxC }: Ends): Ends => ({
  minC: tenth(Math.min(airC, minC + Math.max(0, airC - maxC))),
  maxC: airC,
});

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** The farm as it is with a spell in its forecast. */
export const withSpell = (picture: FarmPicture, spell: Spell): FarmPicture => ({
  ...picture,
  climate: { ...picture.climate, forecast: forecastWith(picture, spell) },
});
