import type { PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import { isKeptOut, keptOutUntil, type Treatment } from '../../farm/treated.js';
import { formatDate } from '../../units/dates.js';
import type { AnimalLine } from './animal-lines.js';
import type { Alarm, Looked } from './looked-at.js';
import { isIn, keptOutOn, sayKept, type Gives } from '../medicines.js';

/**
 * Milk and eggs that are not to be eaten from the day of a medicine on, and animals that leave, by the
 * plan or as it was told, while it runs.
 */
export const medicineAlarms = (looked: Looked): Alarm[] =>
  (looked.picture.treatments ?? []).flatMap((treatment) => {
    const id = isIn(treatment, looked.picture);
    const line = looked.animals.find((each) => each.id === id);
    return [
      ...(line ? keptOutNow(looked, line, treatment) : []),
      ...(line ? leavesTooSoon(looked, line, treatment) : []),
      // Of a batch that is all gone there is no line, and its meat is in the freezer.
      ...processedTooSoon(looked, treatment),
      ...wentTooSoon(looked, treatment),
    ];
  });

const placeOf = ({ kind, id }: AnimalLine): Alarm['place'] =>
  kind === 'batch' ? { kind, id } : { kind: 'pasture' };

export const LABEL =
  'The days are those of the label, counted from the last dose. Given otherwise than the label says, only your veterinarian can say how long.';

function keptOutNow({ picture }: Looked, line: AnimalLine, treatment: Treatment): Alarm[] {
  const keptOut =
    (line.medicines ?? []).length === 0 ? [] : keptOutOn(treatment, picture.today, givesOf(line));
  const [eaten] = keptOut.filter((what) => what !== 'meat');
  if (eaten === undefined) return [];
  const until = keptOutUntil(treatment, eaten);
  const whom = picture.cows.find(({ id }) => id === treatment.cowId)?.name;
  const words = whom === undefined ? eaten : `${eaten} of ${whom}`;
  return [
    {
      key: `alarm/medicine/${eaten}/${treatment.id ?? treatment.date}`,
      isAlarm: true,
      level: 'stop',
      words: `${words} is not to be used: medicine`.replace('eggs is', 'eggs are'),
      text: `${sayKept(picture, treatment, keptOut)}. ${
        until === undefined ? 'Read the days on the label and change what was told. ' : ''
      }${
        eaten === 'milk'
          ? 'Milk her last and into another pail, throw it away, and mark her so that whoever milks sees it.'
          : 'Gather them apart and throw them away: nobody eats, sells or gives them.'
      } ${LABEL}`,
      of: line.name,
      place: placeOf(line),
    },
  ];
}

/** What animals of a line give, by which days that were not told are asked for. */
export const givesOf = (line: AnimalLine): Gives =>
  line.kind === 'batch' ? { eggs: line.eggs !== undefined } : { milk: line.isMilked === true };

/** The day on which they leave by the plan lies within the days of a medicine. */
function leavesTooSoon(
  { picture, batches }: Looked,
  line: AnimalLine,
  treatment: Treatment,
): Alarm[] {
  const until = keptOutUntil(treatment, 'meat');
  if (until === undefined) return [];
  const days =
    line.kind === 'batch'
      ? batches.flatMap(({ id, plan }) =>
          id === line.id && plan.leaving
            ? [...plan.leaving.processingDays.map(({ on }) => on), String(plan.leaving.on.value)]
            : [],
        )
      : leavingOf(picture, line.id, treatment);
  const [first] = days.filter((day) => picture.today <= day && day <= until).toSorted();
  if (first === undefined) return [];
  const day = (date: PlainDate): string =>
    formatDate(date, { units: picture.farm.units, today: picture.today });
  return [
    {
      key: `alarm/medicine/leaves/${treatment.id ?? treatment.date}/${first}`,
      isAlarm: true,
      level: 'stop',
      words: `medicine runs past ${day(first)}, when they leave`,
      text: `${treatment.product}: no meat through ${day(until)}. Have them leave after that day; a buyer of live animals is told of it. ${LABEL}`,
      of: line.name,
      place: placeOf(line),
    },
  ];
}

/** Days on which head of a herd leave that can have had the medicine. */
function leavingOf(
  { herds, cows }: Pick<FarmPicture, 'herds' | 'cows'>,
  herdId: string,
  { cowId, date }: Treatment,
): PlainDate[] {
  const groups = herds.find(({ id }) => id === herdId)?.groups ?? [];
  const classId = cows.find(({ id }) => id === cowId)?.classId;
  return groups
    .filter((group) => group.leftAs === undefined)
    .filter((group) => classId === undefined || group.classId === classId)
    .flatMap(({ leavesOn, arrivesOn }) =>
      leavesOn === undefined || (arrivesOn !== undefined && date < arrivesOn) ? [] : [leavesOn],
    );
}

/** Birds that were told processed while a medicine ran. */
function processedTooSoon({ picture }: Looked, treatment: Treatment): Alarm[] {
  const { about } = treatment;
  const told = picture.headChanges.findLast(
    ({ batchId, change, date }) =>
      batchId === about && change === 'processed' && isKeptOut(treatment, 'meat', date),
  );
  if (!told) return [];
  const of = picture.batches.find(({ id }) => id === about)?.name;
  return [
    {
      key: `alarm/medicine/processed/${treatment.id ?? treatment.date}/${told.id}`,
      isAlarm: true,
      level: 'stop',
      words: 'processed while a medicine ran',
      text: `${sayKept(picture, treatment, ['meat'])}. Keep that meat apart, eat, sell or give none of it, and ask your veterinarian. ${LABEL}`,
      ...(of === undefined ? {} : { of }),
      place: { kind: 'batch', id: about },
    },
  ];
}

/** Cattle that were told slaughtered, sold or given away while a medicine ran, where they are or may be those that had it. */
function wentTooSoon({ picture }: Looked, treatment: Treatment): Alarm[] {
  const { cowId, head } = treatment;
  const went = (picture.cattleLeft ?? []).filter(
    ({ on, details: { how } }) =>
      (how === 'slaughtered' || how === 'sold' || how === 'given') &&
      isKeptOut(treatment, 'meat', on),
  );
  const told =
    cowId === undefined
      ? went.find(({ about }) => about === treatment.about)
      : (went.find(({ details }) => details.cowId === cowId) ?? mayBeHer(picture, treatment, went));
  if (!told) return [];
  const of = picture.herds.find(({ id }) => id === told.about)?.name;
  const { how } = told.details;
  const may =
    cowId === undefined
      ? head === undefined
        ? ''
        : ' They may be among those that had it.'
      : told.details.cowId === undefined
        ? ' She may be it: see which, and name the cow where that was told.'
        : '';
  return [
    {
      key: `alarm/medicine/went/${treatment.id ?? treatment.date}/${told.id}`,
      isAlarm: true,
      level: 'stop',
      words: `${how === 'given' ? 'given away' : how} while a medicine ran`,
      text: `${sayKept(picture, treatment, ['meat'])}.${may} ${
        how === 'slaughtered'
          ? 'Keep that meat apart, eat, sell or give none of it, and ask your veterinarian.'
          : `Tell ${how === 'sold' ? 'the buyer' : 'who has them'} today, with the medicine and the day: nobody may slaughter them before the days are over.`
      } ${LABEL}`,
      ...(of === undefined ? {} : { of }),
      place: { kind: 'pasture' },
    },
  ];
}

/** Of those that went without a name, one that a named cow may be: of her herd and class, and she is not known to have gone otherwise. */
function mayBeHer(
  picture: Pick<FarmPicture, 'cows' | 'cattleLeft'>,
  treatment: Treatment,
  went: NonNullable<FarmPicture['cattleLeft']>,
): (typeof went)[number] | undefined {
  const { cows, cattleLeft = [] } = picture;
  const { cowId, about } = treatment;
  if (cattleLeft.some(({ details }) => details.cowId === cowId)) return undefined;
  const herdIds = new Set([about, isIn(treatment, picture)]);
  const herClass = cows.find(({ id }) => id === cowId)?.classId;
  return went.find(
    ({ about: herdId, details }) =>
      details.cowId === undefined &&
      herdIds.has(herdId) &&
      (details.classId ?? herClass) === (herClass ?? details.classId),
  );
}
