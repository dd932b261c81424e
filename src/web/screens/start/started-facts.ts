import { isStarted, USUAL_STARTED_WEEKS } from '../../../../shared/farm/batch-origin.js';
import type { Batch } from '../../../../shared/farm/batch.js';
import type { Facility } from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate, formatLongDate, type DateReader } from '../../../../shared/units/dates.js';
import {
  formatAbout,
  formatHours,
  formatValue,
  type Reader,
} from '../../../../shared/units/format.js';
import type { SavedPicture } from '../../api/queries.js';
import { weekInHours } from './week-in-hours.js';
import { unbroken } from '../../explain/unbroken.js';

/** One thing a new farm has: in words, and the place of the farm where it is changed. */
export interface StartedFact {
  readonly name: string;
  readonly says: string;
  readonly isAssumed: boolean;
  readonly to: string;
}

/** All that a plan rests on after a start, in the order in which it was asked. */
export const startedFacts = (picture: SavedPicture, tables: Tables): StartedFact[] => [
  ...height(picture),
  ...people(picture, tables),
  ...absences(picture),
  ...batches(picture),
  ...buildings(picture),
  ...cattle(picture, tables),
  ...paddocks(picture),
  ...jobSets(picture, tables),
];

const GARDEN = new Set(['garden-beds', 'garden-fall']);

/** Garden and hives, by the work that came with them. */
const jobSets = ({ jobs, farm }: SavedPicture, tables: Tables): StartedFact[] =>
  tables.jobSets.flatMap(({ id, name, counted }) => {
    const count = jobs.filter(({ setId }) => setId === id).length;
    // How large the garden is, nobody was asked.
    const isAssumed = GARDEN.has(id);
    const size = isAssumed ? `, taken for ${counted[farm.units].unit}` : '';
    return count === 0 ? [] : [{ name, says: `${count} jobs${size}`, isAssumed, to: 'work/own' }];
  });

const isAssumed = ({ assumed = [] }: { assumed?: readonly string[] }, ...fields: string[]) =>
  fields.some((field) => assumed.includes(field));

/** Only where nobody gave it: frost and cold nights hang on it. */
function height({ farm, today }: SavedPicture): StartedFact[] {
  if (!isAssumed(farm, 'elevationM')) return [];
  const says = `about ${formatAbout(farm.elevationM, 'm', { ...farm, today })}: nobody has said how high the farm lies`;
  return [{ name: 'Height above sea level', says, isAssumed: true, to: 'place' }];
}

function people({ people: all }: SavedPicture, { work }: Tables): StartedFact[] {
  return all.map((person) => {
    return {
      name: person.name,
      says: hoursInWords(person, work.hoursByWeekday.values),
      isAssumed: isAssumed(person, 'hoursByWeekday'),
      to: `place#person-${person.id}`,
    };
  });
}

function hoursInWords(
  { isChild, hoursByWeekday }: SavedPicture['people'][number],
  usual: readonly number[],
): string {
  const hours = hoursByWeekday ?? usual;
  const sum = hours.reduce((all, each) => all + each, 0);
  if (hoursByWeekday !== undefined && isChild && sum === 0) return 'no work is given to this child';
  const aWeek = `about ${formatHours(sum)} a week`;
  // Nobody chose these: they are said as the choices are, to be held against them.
  if (hoursByWeekday === undefined) return `${aWeek}, beside a job: ${weekInHours(hours)}`;
  return isChild ? `${aWeek}, for the hens and jobs for a child` : aWeek;
}

function absences({ people: all, farm, today }: SavedPicture): StartedFact[] {
  const reader = { ...farm, today };
  return all.flatMap(({ name, away }) =>
    away.map(({ from, to }) => ({
      name: `${name} away`,
      says: from === to ? formatDate(from, reader) : spanOf(from, to, reader),
      isAssumed: false,
      to: 'work/away',
    })),
  );
}

const spanOf = (from: string, to: string, reader: DateReader): string =>
  `${formatDate(from, reader)} to ${formatDate(to, reader)}`;

const batches = ({ batches: all, farm, today }: SavedPicture): StartedFact[] =>
  all.map((batch) => ({
    name: batch.name,
    says:
      batch.arrivalDate < today
        ? `${batch.orderedBirds ?? batch.wantedBirds} here, taken for ${sayYoung(batch)} on ${formatLongDate(batch.arrivalDate, { ...farm, today })}`
        : `${batch.wantedBirds} at the end, as ${sayYoung(batch)} arriving ${formatLongDate(batch.arrivalDate, { ...farm, today })}`,
    isAssumed: isAssumed(batch, 'arrivalDate'),
    to: `batches/${batch.id}`,
  }));

const sayYoung = ({ origin, arrivalAgeWeeks, sex }: Batch): string =>
  isStarted({ origin })
    ? `started pullets ${arrivalAgeWeeks ?? USUAL_STARTED_WEEKS} weeks old`
    : `day-old ${sex === 'pullets' ? 'pullets' : 'chicks'}`;

const buildings = ({ facilities, farm, today }: SavedPicture): StartedFact[] =>
  facilities.flatMap((facility) => {
    const says = sizeOf(facility, { ...farm, today });
    return says === undefined
      ? []
      : [
          {
            name: facility.name,
            says,
            isAssumed: isAssumed(facility, 'name'),
            to: `facilities#facility-${facility.id}`,
          },
        ];
  });

/** What decides most of a building; of feed bins nothing does. */
function sizeOf(facility: Facility, reader: Reader): string | undefined {
  const length = (meters: number): string => formatValue(meters, 'm', reader);
  if (facility.kind === 'brooder') {
    const { widthM, lengthM, heat, closesOff, roomC } = facility;
    const heaters = heat.kind === 'gas' ? 'gas heaters' : `lamps of ${heat.wattsEach} W`;
    const board = closesOff ? ', with a board across it while they are small' : '';
    const place =
      roomC === undefined
        ? ''
        : `, in a garage or basement of ${formatValue(roomC, 'degC', reader)} or warmer: if you have none, change its place here`;
    return `${length(widthM)} by ${length(lengthM)}, ${heat.count} ${heaters}${board}${place}`;
  }
  if (facility.kind === 'field-pen') {
    const { count, floorM2 } = facility;
    return `${unbroken(`${count} × ${formatValue(floorM2, 'm2', reader)}`)} of ground`;
  }
  if (facility.kind === 'freezer') return formatValue(facility.liters, 'freezerL', reader);
  if (facility.kind === 'coop') return `${formatValue(facility.floorM2, 'm2', reader)} of floor`;
  return undefined;
}

const cattle = ({ herds, farm, today }: SavedPicture, tables: Tables): StartedFact[] =>
  herds.map((herd) => ({
    name: herd.name,
    says: herd.groups
      .map(({ head, classId, arrivesOn, calvesOn }) => {
        const kind = tables.cattle.classes.find(({ id }) => id === classId)!.name.toLowerCase();
        const when =
          arrivesOn === undefined
            ? 'here'
            : `arriving ${formatLongDate(arrivesOn, { ...farm, today })}`;
        const due =
          calvesOn === undefined ? '' : `, due about ${formatDate(calvesOn, { ...farm, today })}`;
        return `${head} × ${kind}, ${when}${due}`;
      })
      .join('; '),
    isAssumed: false,
    to: 'pasture/land',
  }));

/** Paddocks of one size in one line. */
function paddocks({ paddocks: all, farm, today }: SavedPicture): StartedFact[] {
  const [first] = all;
  if (!first) return [];
  const size = formatValue(first.areaM2, 'ha', { ...farm, today });
  return [
    {
      name: 'Paddocks',
      says: all.length === 1 ? size : `${all.length} of ${size} each`,
      isAssumed: isAssumed(first, 'areaM2'),
      to: 'pasture/land',
    },
  ];
}
