import { addDays, plainDateAt } from '../../../../shared/calendar/plain-date.js';
import type { Farm } from '../../../../shared/farm/farm.js';
import type { FreeTime, Start } from '../../../../shared/farm/start.js';
import { browserUnits } from '../../api/browser-units.js';

/** Where the farm lies, as it was found. */
export interface FoundPlace extends Pick<
  Start,
  'latitudeDeg' | 'longitudeDeg' | 'units' | 'currency' | 'country' | 'region'
> {
  /** What it is called, if anything. */
  readonly name?: string;
  /** The place as one line. */
  readonly said: string;
  readonly timeZone: string;
}

export interface AwayDraft {
  readonly person: number;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

type OwnClimate = Partial<
  Pick<Farm, 'monthlyMinC' | 'monthlyMaxC' | 'monthlyRainMm' | 'lastFrost' | 'firstFrost'>
>;

/** All that is typed and chosen before the first plan; undefined is what nobody said. */
export interface StartDraft {
  readonly isOnline: boolean;
  readonly place?: FoundPlace | undefined;
  readonly elevationM?: number | undefined;
  readonly isConfirmed: boolean;
  readonly climate?: OwnClimate | undefined;
  readonly adults: number;
  readonly children: number;
  readonly free: readonly (FreeTime | undefined)[];
  readonly away: readonly AwayDraft[];
  readonly meat?: number | undefined;
  readonly meatFrom?: string | undefined;
  readonly layers?: number | undefined;
  readonly layersFrom?: string | undefined;
  readonly head?: number | undefined;
  readonly classId: string;
  readonly cattleFrom?: string | undefined;
  readonly paddocks?: number | undefined;
  readonly paddockM2?: number | undefined;
}

export const EMPTY_START: StartDraft = {
  isOnline: false,
  isConfirmed: false,
  adults: 2,
  children: 0,
  free: [],
  away: [],
  classId: 'cow-calf',
};

/** The units of the place, or those of whoever sits here. */
export const unitsOf = ({ place }: StartDraft): Farm['units'] => place?.units ?? browserUnits();

/** The month it is and the eleven after it, by their first days. */
export function monthsAhead(timeZone: string | undefined): string[] {
  const zone = timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  const months = [`${plainDateAt(Date.now(), zone).slice(0, 7)}-01`];
  while (months.length < 12) months.push(`${addDays(months.at(-1)!, 31).slice(0, 7)}-01`);
  return months;
}

/** What is sent, or undefined while the place is not known. */
export function startOf(draft: StartDraft): Start | undefined {
  const { place, climate } = draft;
  if (place === undefined) return undefined;
  const { said: _said, name, ...where } = place;
  return {
    ...where,
    ...(name === undefined ? {} : { place: name }),
    ...given('elevationM', draft.elevationM),
    ...(climate === undefined ? {} : { climate: climate as NonNullable<Start['climate']> }),
    ...(draft.isConfirmed ? { hasConfirmedClimate: true } : {}),
    weatherFetch: draft.isOnline,
    people: peopleOf(draft),
    ...birdsOf('meat', draft.meat, draft.meatFrom),
    ...birdsOf('layers', draft.layers, draft.layersFrom),
    ...(draft.head
      ? {
          cattle: {
            classId: draft.classId,
            head: draft.head,
            ...given('arrivesOn', draft.cattleFrom),
          },
        }
      : {}),
    ...(draft.paddocks !== undefined || draft.paddockM2 !== undefined
      ? { paddocks: { ...given('count', draft.paddocks), ...given('areaM2', draft.paddockM2) } }
      : {}),
  };
}

const given = <Name extends string, T>(name: Name, value: T | undefined) =>
  (value === undefined ? {} : { [name]: value }) as { [K in Name]?: T };

const birdsOf = (kind: 'meat' | 'layers', birds?: number, from?: string) =>
  birds ? { [kind]: { birds, ...given('from', from) } } : {};

function peopleOf({ adults, children, free, away }: StartDraft): Start['people'] {
  return Array.from({ length: adults + children }, (_, k) => ({
    ...(k < adults ? given('free', free[k]) : { isChild: true }),
    away: away.flatMap(({ person, from, to }) =>
      person === k && from !== undefined && to !== undefined ? [{ from, to }] : [],
    ),
  }));
}
