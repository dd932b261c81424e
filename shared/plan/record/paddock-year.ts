import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { grazingsOf, type Grazing } from '../../farm/herd-places.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { mowingsOf, type FactOf, type ToldFact } from '../../farm/told-fact.js';
import { isThere } from '../../pasture/herd-demand.js';
import { animalUnits } from '../../pasture/intake.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { silentDays } from '../../pasture/silent-days.js';

/** What a paddock carried in a calendar year, by moves and mowing that were told. */
export interface PaddockYear {
  readonly paddockId: string;
  readonly name: string;
  readonly areaM2: number;
  /** Stays of herds, and the days they lasted; two herds at once count twice. */
  readonly stays: number;
  readonly days: number;
  /** One animal for a day, whatever its size. */
  readonly animalDays: number;
  /** Animal days to a hectare. */
  readonly animalDaysPerHa: number;
  /** Dry matter that the cattle took, fed beside it or not, kg. */
  readonly grazedKg: number;
  readonly bales: number;
  /** Dry matter in those bales, kg. */
  readonly baledKg: number;
  readonly yieldKgPerHa: number;
  /** The last day that is counted of a herd that was told to go in, and of which nothing was told since. */
  readonly countedTo?: PlainDate;
}

/**
 * What each paddock carried in a calendar year: animal days of the cattle that are in the herd now, on
 * days on which they were there, each taken to eat what 1,000 lb of cattle are said to eat, by its
 * weight as it was typed. Paddocks that nobody grazed or mowed come last, with zeros.
 *
 * Left out: growth of an animal within the year, calves at foot, herds that are gone, and hay fed on
 * the paddock, which is taken as grass. Source of the need: the table of animal units.
 *
 * @param facts moves and mowing of the farm, of any year
 */
export function paddockYears(
  picture: PaddockPicture,
  tables: Tables,
  { year, facts }: { readonly year: number; readonly facts: readonly ToldFact[] },
): PaddockYear[] {
  return ofYear(year, toldOf(facts), picture, tables);
}

/** What the paddocks carried in a year, some of several. */
export interface PaddocksOfYear {
  readonly year: number;
  readonly paddocks: readonly PaddockYear[];
}

/** The same of every year since the first of which any was told to be grazed or mown, in turn. */
export function paddocksByYear(
  picture: PaddockPicture,
  tables: Tables,
  facts: readonly ToldFact[],
): PaddocksOfYear[] {
  const told = toldOf(facts);
  const days = [...told.grazings.map(({ from }) => from), ...told.mowings.map(({ date }) => date)];
  const first = days.reduce((least, day) => (day < least ? day : least), picture.today);
  const from = Number(first.slice(0, 4));
  const years = Number(picture.today.slice(0, 4)) - from + 1;
  return Array.from({ length: years }, (_, k) => from + k).map((year) => ({
    year,
    paddocks: ofYear(year, told, picture, tables),
  }));
}

interface ToldOfPaddocks {
  readonly grazings: readonly Grazing[];
  readonly mowings: ReturnType<typeof mowingsOf>;
}

function toldOf(facts: readonly ToldFact[]): ToldOfPaddocks {
  const moves = facts.filter((fact): fact is FactOf<'herd-move'> => fact.kind === 'herd-move');
  const mown = facts.filter((fact): fact is FactOf<'paddock-mown'> => fact.kind === 'paddock-mown');
  return { grazings: grazingsOf(moves), mowings: mowingsOf(mown) };
}

function ofYear(
  year: number,
  { grazings, mowings }: ToldOfPaddocks,
  { paddocks, herds, today, pastureChoices }: PaddockPicture,
  tables: Tables,
): PaddockYear[] {
  const stays = grazings.flatMap((stay) => {
    const known = knownTo(stay, { herds, paddocks, today }, tables);
    return within(stay, year, known) ?? [];
  });
  const { hay } = tables.pasture;
  const bale = rowById(hay.bales, pastureChoices.baleId ?? hay.bales.at(-1)!.id);
  return paddocks
    .map(({ id, name, areaM2 }) => {
      const here = stays.filter(({ paddockId, herdId }) => paddockId === id && byId(herds, herdId));
      const ate = here.map((stay) => eaten(byId(herds, stay.herdId)!, stay, tables));
      const bales = mowings
        .filter(({ paddockId, date }) => paddockId === id && date.startsWith(`${year}-`))
        .reduce((sum, each) => sum + (each.bales ?? 0), 0);
      const animalDays = total(ate.map((each) => each.animalDays));
      const grazedKg = total(ate.map((each) => each.kg));
      const baledKg = bales * bale.kg * hay.dryMatterShare;
      const ha = areaM2 / 10_000;
      return {
        ...{ paddockId: id, name, areaM2, bales, baledKg, animalDays, grazedKg },
        stays: here.length,
        days: total(here.map(({ from, to }) => daysBetween(from, to) + 1)),
        animalDaysPerHa: animalDays / ha,
        yieldKgPerHa: (grazedKg + baledKg) / ha,
        ...countedTo(here, today),
      };
    })
    .sort((a, b) => b.yieldKgPerHa - a.yieldKgPerHa);
}

type PaddockPicture = Pick<FarmPicture, 'paddocks' | 'herds' | 'today' | 'pastureChoices'>;
type Stay = Grazing & {
  readonly to: PlainDate;
  /** Nobody told that they left. */
  readonly isOpen: boolean;
};

/**
 * The last day of a stay that is believed: of one whose end nobody told, no later than a herd stays
 * anywhere and a move is recent, where there are other paddocks it can have gone into.
 */
function knownTo(
  { herdId, from, to, seenOn = from }: Grazing,
  { herds, paddocks, today }: Pick<PaddockPicture, 'herds' | 'paddocks' | 'today'>,
  tables: Tables,
): PlainDate {
  if (to !== undefined) return to;
  const herd = byId(herds, herdId);
  if (!herd || paddocks.length < 2) return today;
  const last = addDays(seenOn, silentDays(tables, herd));
  return last < today ? last : today;
}

function countedTo(here: readonly Stay[], today: PlainDate): Pick<PaddockYear, 'countedTo'> {
  const cut = here.find(({ isOpen, to }) => isOpen && to < today);
  return cut ? { countedTo: cut.to } : {};
}

/** The part of a stay that lies in a year. */
function within({ to, from, ...stay }: Grazing, year: number, known: PlainDate): Stay | undefined {
  const [first, last] = [`${year}-01-01`, `${year}-12-31`];
  const begins = from < first ? first : from;
  const ends = last < known ? last : known;
  return ends < begins
    ? undefined
    : { ...stay, from: begins, to: ends, isOpen: to === undefined && ends === known };
}

function eaten(
  { groups }: Herd,
  { from, to }: Stay,
  { cattle }: Tables,
): { animalDays: number; kg: number } {
  const { perKgLive, dryKgPerUnitDay } = cattle.animalUnits;
  let [animalDays, kg] = [0, 0];
  for (let on = from; on <= to; on = addDays(on, 1)) {
    for (const group of groups.filter((each) => isThere(each, on))) {
      const weightKg = group.weightKg ?? rowById(cattle.classes, group.classId).weightKg;
      animalDays += group.head;
      kg += group.head * animalUnits(perKgLive, weightKg) * dryKgPerUnitDay;
    }
  }
  return { animalDays, kg };
}

const byId = (herds: readonly Herd[], id: string): Herd | undefined =>
  herds.find((herd) => herd.id === id);

const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);
