import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { from, fromJudgement, input, quantity } from '../../explain/quantity.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import type { Formula } from '../../explain/formula.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { calvingSeasons, type CalvingSeason } from '../../pasture/calving-season.js';
import { hasCattle } from '../../pasture/herd-demand.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import { formatValue } from '../../units/format.js';
import { hayOfDay, herdDays, type HerdDay } from '../pasture/herd-day.js';
import { cautionsSaid } from './cautions-said.js';
import { planned } from './cold-snap.js';
import type { Spell } from './typed-weather.js';
import type { Mishap, WayOn } from './way-on.js';

export const coldCattleFormulas = {
  hay: {
    id: 'more-hay-in-cold',
    title: 'More hay on such a day',
    words:
      'What the herd needs on the day, as hay, times a share for each degree that the air is below what a dry winter coat stands. Rule of thumb for air that is still: wind counts as colder air.',
    symbols: 'ΔH = H·s·(T_dry − T)',
    sources: ['OSU_COLD'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/**
 * What cold nights mean for cattle that are there: calves that come or are young, and more hay.
 *
 * Left out: wind and rain, of which the sentences speak; the hay of herds that cannot be planned.
 */
export function cattleInCold(picture: FarmPicture, tables: Tables, spell: Spell): Mishap[] {
  const dayOf = planned(() => herdDays(picture, tables, { pasture: undefined, on: picture.today }));
  return picture.herds.flatMap((herd) => {
    if (!hasCattle(herd, picture.today)) return [];
    return ofHerd({ picture, tables, spell, herd, day: dayOf?.(herd) });
  });
}

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly spell: Spell;
  readonly herd: Herd;
  readonly day: HerdDay | undefined;
}

function ofHerd(asked: Asked): Mishap[] {
  const { picture, tables, spell, herd } = asked;
  const { cowColdC, cowWetColdC, calfColdC } = tables.judgements.alarms;
  const say = (airC: number): string => formatValue(airC, 'degC', picture.farm);
  const calves = spell.airC < calfColdC.value ? calvesOnNights(asked) : [];
  const isCold = spell.airC < cowColdC.value;
  const isColdWhenWet = spell.airC < cowWetColdC.value;
  if (!isColdWhenWet && calves.length === 0) return [];
  const hay = isCold ? moreHay(asked) : [];
  return [
    {
      name: herd.name,
      follows: [
        `In a dry winter coat and out of the wind they stand nights down to ${say(cowColdC.value)}; wet, or in a summer coat, they feel the cold from ${say(cowWetColdC.value)} on.`,
        ...calves,
      ],
      numbers: [],
      ways: [
        ...(calves.length === 0 ? [] : [bedded()]),
        ...(isColdWhenWet ? [outOfTheWind()] : []),
        ...hay.map(fedMore),
      ],
      cautions: cautionsSaid(tables, picture.farm, [
        ...(calves.length === 0 ? [] : ['cold-calf', 'calving']),
        ...(spell.airC < 0 ? ['cattle-ice'] : []),
      ]),
    },
  ];
}

/** Calves that may come on these nights, and those that are young, a sentence each. */
function calvesOnNights({ picture, tables, spell, herd }: Asked): string[] {
  const { today } = picture;
  const last = addDays(today, spell.days);
  const young = addDays(today, -tables.judgements.alarms.calfYoungDays.value);
  const seasons = calvingSeasons(
    withNamedCows(herd, picture.cows),
    picture.calvings ?? [],
    today,
    tables,
  );
  const toCome = sumOf(seasons, (season) => (mayCome(season, today, last) ? left(season) : 0));
  const born = sumOf(seasons, (season) => bornSince(season, young, today));
  return [
    ...(toCome === 0
      ? []
      : [
          `${toCome === 1 ? 'A calf' : `${toCome} calves`} may come on these nights: born wet, it chills within hours.`,
        ]),
    ...(born === 0
      ? []
      : [
          `${born === 1 ? 'A calf is' : `${born} calves are`} younger than four weeks: they feel the cold long before the cows do.`,
        ]),
  ];
}

const sumOf = (seasons: readonly CalvingSeason[], of: (season: CalvingSeason) => number): number =>
  seasons.reduce((sum, season) => sum + of(season), 0);

const left = ({ head, calved }: CalvingSeason): number => head - calved;

/** A cow that is late has the calf still before her. */
const mayCome = ({ due }: CalvingSeason, today: PlainDate, last: PlainDate): boolean =>
  due.early <= last && today <= due.late;

/** As it was told; where nothing was, by the day they were due. */
function bornSince({ told, due, head }: CalvingSeason, young: PlainDate, today: PlainDate): number {
  if (told.length === 0) return young <= due.due && due.late < today ? head : 0;
  return told.reduce((sum, { date, calves }) => sum + (young <= date ? calves : 0), 0);
}

const bedded = (): WayOn => ({
  id: 'bedded',
  words: 'A dry, bedded place for cows that calve and for calves',
  follows: [
    'A shed or a corner out of the wind, with deep dry straw before each night, for cows that are near and for the calves. Air must still get out at the top.',
    'Look every three to four hours, at night too. Rub a wet calf dry, the ears as well, off snow and wet ground; it should suck within two hours.',
  ],
});

const outOfTheWind = (): WayOn => ({
  id: 'out-of-wind',
  words: 'Dry ground out of the wind',
  follows: [
    'Woods, a wall or a row of bales on the windward side, and straw where the ground is wet. Look at their water: see that it is open morning and evening.',
  ],
});

const fedMore = (hay: NumberQuantity): WayOn => ({
  id: 'more-hay',
  words: 'More hay in the evening',
  follows: [
    'They eat what keeps them warm through the night. A little more over some days after the cold does better than all of it at once.',
  ],
  numbers: [hay],
});

/** By the low alone: the day is milder, wind makes it colder. */
function moreHay({ picture, tables, spell, day }: Asked): NumberQuantity[] {
  if (!day) return [];
  const { cowColdC, cowColdShare } = tables.judgements.alarms;
  const { weight } = hayOfDay(picture, tables, day);
  const more = quantity(
    'More hay on such a day',
    weight.value * cowColdShare.value * (cowColdC.value - spell.airC),
    'kg',
    coldCattleFormulas.hay,
    [
      from(weight, 'H'),
      fromJudgement(cowColdShare, 's'),
      fromJudgement(cowColdC, 'T_dry'),
      input('Low of the night', spell.airC, 'degC', 'T'),
    ],
  );
  return [more];
}
