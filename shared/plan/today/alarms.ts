import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { formatValue } from '../../units/format.js';
import { COOLING } from '../heat-instructions.js';
import type { Unit } from '../../units/unit.js';
import type { CalendarEntry } from '../work/calendar-entries.js';
import type { BatchLine } from './batch-line.js';
import { earlyOnGrass } from './early-on-grass.js';
import { feedAlarms } from './feed-alarms.js';
import { plannedOverLimit } from './limit-alarms.js';
import type { Alarm, Attention, Looked } from './looked-at.js';
import { medicineAlarms } from './medicine-alarms.js';

/** All alarms of a day, by rules that need no plan to be made again. */
export function alarmsOf(looked: Looked): Alarm[] {
  return [
    ...looked.animals.flatMap((line) =>
      line.kind === 'batch'
        ? [thermometer, coldTonight, hotToday, boxIndoors].flatMap((of) => of(looked, line))
        : [],
    ),
    ...losses(looked),
    ...feedAlarms(looked),
    ...grazedTooLow(looked),
    ...backTooSoon(looked),
    ...earlyOnGrass(looked),
    ...frostOnTender(looked),
    ...plannedOverLimit(looked),
    ...medicineAlarms(looked),
  ];
}

const sayIn =
  ({ picture: { farm } }: Looked) =>
  (value: number, unit: Unit): string =>
    formatValue(value, unit, farm);

/** A thermometer under the heat that shows far from what is wanted. */
function thermometer(looked: Looked, line: BatchLine): Alarm[] {
  const { picture, judged } = looked;
  const seen = picture.brooderLooks.findLast(({ batchId }) => batchId === line.id);
  const wanted = line.heat?.wanted.value;
  if (!seen || typeof wanted !== 'number' || seen.date < addDays(picture.today, -1)) return [];
  const say = sayIn(looked);
  const off = seen.underHeatC - wanted;
  if (Math.abs(off) <= judged.brooderOffK.value) return [];
  const isCold = off < 0;
  return [
    {
      key: `alarm/thermometer/${line.id}/${seen.id}`,
      isAlarm: true,
      level: isCold ? 'stop' : 'act',
      words: `${say(seen.underHeatC, 'degC')} under the heat, ${say(wanted, 'degC')} wanted`,
      text: isCold
        ? 'They need more heat: hang it lower, though a lamp or gas heater never closer than its maker says, put one more on, or close the box in. Look at the chicks: piled up and loud means cold. Read it again in an hour.'
        : 'They need less heat: hang it higher or turn it down, take the lid off or switch one off. Look at the chicks: far from the heat, with open beaks, means hot. Read it again in an hour.',
      of: line.name,
      place: { kind: 'batch', id: line.id },
    },
  ];
}

/** A night in which all the heat there is is not enough. */
function coldTonight(looked: Looked, line: BatchLine): Alarm[] {
  const { plan, picture } = looked;
  const { wanted, tooCold, night } = line.heat ?? {};
  if (typeof wanted?.value !== 'number' || !tooCold || !night) return [];
  const say = sayIn(looked);
  const on = night.on.value === 0 ? 'without heat' : 'with all on';
  const isForecast = plan.weather.isForecast[0] === 1;
  return [
    {
      key: `alarm/cold-tonight/${line.id}/${picture.today}`,
      isAlarm: true,
      level: 'stop',
      words: `the brooder gets too cold tonight: ${say(tooCold.value, 'degC')} ${on}`,
      text: `${say(wanted.value, 'degC')} is wanted under the heat${isForecast ? '' : '; without a forecast the night is reckoned as cold as one in ten'}. Close the box in or off to a part, bring one more heater that the circuit carries, or bring the box indoors before dark.`,
      ...{ of: line.name, by: picture.today, place: { kind: 'batch', id: line.id } },
    },
  ];
}

/** A forecast noon that makes the brooder too hot, with no heat on or as little as they can do with. */
function hotToday(looked: Looked, line: BatchLine): Alarm[] {
  const { tooHot } = line.heat ?? {};
  if (!tooHot) return [];
  const { air, suffersAboveC, level } = tooHot;
  const say = sayIn(looked);
  const { today } = looked.picture;
  return [
    {
      key: `alarm/hot-today/${line.id}/${today}`,
      isAlarm: true,
      level,
      words: `the brooder gets too hot today: ${say(air.value, 'degC')}`,
      text: `Birds of that age suffer above ${say(suffersAboveC, 'degC')}. ${COOLING}`,
      ...{ of: line.name, by: today, place: { kind: 'batch', id: line.id } },
    },
  ];
}

/**
 * Chicks that came before their brooder stands: nothing is worked out of the box they are in. Said once for
 * each temperature that they want.
 */
function boxIndoors(looked: Looked, line: BatchLine): Alarm[] {
  const { wanted, isToBuild } = line.heat ?? {};
  if (!isToBuild || typeof wanted?.value !== 'number') return [];
  const warm = sayIn(looked)(wanted.value, 'degC');
  return [
    {
      key: `alarm/box-indoors/${line.id}/${wanted.value}`,
      isAlarm: true,
      level: 'stop',
      words: `no brooder stands yet: ${warm} under heat in a box indoors`,
      text: `A room alone is too cold for them. Keep them in a big box in a warm room, out of drafts, with heat over one end and a cool end to walk to; a thermometer at their height under it shows ${warm}. Hang the heat so that it cannot fall, away from the walls of the box. Look every hour or two, at night as well: piled up and loud means cold.`,
      ...{ of: line.name, by: looked.picture.today, place: { kind: 'batch', id: line.id } },
    },
  ];
}

/** Losses above the usual, once for each number of dead. */
const losses = ({ batches }: Looked): Alarm[] =>
  batches.flatMap(({ id, name, plan }) => {
    const issue = plan.issues.find(({ code }) => code === 'losses-above-usual');
    const died = plan.birds.counted?.died.value;
    return issue && died !== undefined
      ? [
          {
            key: `alarm/losses/${id}/${died}`,
            isAlarm: true,
            level: 'stop',
            words: `${died} have died, more than is usual`,
            text: issue.text,
            ...{ of: name, place: { kind: 'batch', id } },
          },
        ]
      : [];
  });

/** A paddock that was read lower than what should be left, with the herd in it or just out. */
function grazedTooLow(looked: Looked): Alarm[] {
  const { picture, pasture, judged } = looked;
  const recentDays = judged.recentDays.value;
  const from = addDays(picture.today, -recentDays);
  const say = sayIn(looked);
  return (pasture?.paddocks ?? []).flatMap(({ id, name, residualHeightCm }): Alarm[] => {
    const read = picture.readings.findLast((each) => each.paddockId === id && from <= each.date);
    if (!read || residualHeightCm - judged.grazedLowCm.value < read.heightCm) return [];
    const grazed = picture.grazings?.findLast((each) => each.paddockId === id);
    const isOfGrazing =
      grazed !== undefined &&
      grazed.from <= read.date &&
      (grazed.to === undefined || read.date <= addDays(grazed.to, recentDays));
    if (!isOfGrazing) return [];
    return [
      {
        key: `alarm/too-low/${id}/${read.date}`,
        isAlarm: true,
        level: 'act',
        words: `${name} is grazed to ${say(read.heightCm, 'cm')}`,
        text: `${say(residualHeightCm, 'cm')} is to be left. Short grass comes back slowly: move on now if they are still there, and rest it longer. Where nothing is ready, feed hay in one paddock rather than grazing all of them short.`,
        ...{ of: 'Grass', place: { kind: 'pasture' } },
      },
    ];
  });
}

/** A herd that was moved today into grass that has not come back since it was last there. */
function backTooSoon({ picture: { grazings = [], today }, pasture }: Looked): Alarm[] {
  return grazings
    .filter(({ from, to }) => to === undefined && from === today)
    .flatMap(({ paddockId, from }): Alarm[] => {
      const paddock = pasture?.paddocks.find(({ id }) => id === paddockId);
      const before = grazings.findLast(
        (each) => each.paddockId === paddockId && each.to !== undefined && each.to <= from,
      );
      if (!paddock || before?.to === undefined) return [];
      if (paddock.readyFromCm <= paddock.height.value) return [];
      const rest = daysBetween(before.to, from);
      return [
        {
          key: `alarm/too-soon/${paddockId}/${from}`,
          isAlarm: true,
          level: 'act',
          words: `back in ${paddock.name} after ${rest} days, before it was ready`,
          text: 'Grass that is bitten before it has come back grows less all season. A day or two of hay, or the next paddock, lets it catch up.',
          ...{ of: 'Grass', place: { kind: 'pasture' } },
        },
      ];
    });
}

/** A forecast night that harms what was put out. */
function frostOnTender(looked: Looked): Alarm[] {
  const { picture, plan, judged } = looked;
  if (plan.weather.isForecast[0] !== 1) return [];
  const { today, jobs, progress } = picture;
  const [ofToday, ofTomorrow = Infinity] = plan.weather.minC;
  const low = Math.min(ofToday!, ofTomorrow);
  // The low of one date is tonight's on two days: who has seen it is not told again.
  const lowOn = ofTomorrow < ofToday! ? addDays(today, 1) : today;
  const out = jobs.filter(({ id, harmedAtOrBelowC }) => {
    if (harmedAtOrBelowC === undefined || harmedAtOrBelowC < low) return false;
    return progress.some(
      ({ key, doneOn }) =>
        (key === `own/${id}` || key.startsWith(`own/${id}/`)) &&
        doneOn !== undefined &&
        addDays(today, -judged.tenderDays.value) <= doneOn,
    );
  });
  if (out.length === 0) return [];
  return [
    {
      key: `alarm/frost/${lowOn}`,
      isAlarm: true,
      level: 'act',
      words: `${sayIn(looked)(low, 'degC')} tonight: cover what is tender`,
      text: `It harms the plants of ${out.map(({ name }) => `“${name}”`).join(', ')}. Cover them before dusk, off leaves and flowers, down to the ground, and take the cover off when it is warm again.`,
      ...{ of: 'Garden', by: today, place: { kind: 'work' } },
    },
  ];
}

/** An alarm as an entry of a calendar: it stands on the day it is. */
export const alarmEntry = (
  { key, of, words, text, by }: Alarm,
  today: PlainDate,
): CalendarEntry => ({
  id: key,
  date: by ?? today,
  title: of === undefined ? words : `${of}: ${words}`,
  text: text ?? '',
  cannotSlip: true,
});

/** The alarms among what wants attention. */
export const alarmsIn = (attention: readonly Attention[]): readonly Alarm[] =>
  attention.filter((each): each is Alarm => each.isAlarm === true);
