import { compare, type Check } from '../../shared/checks/compare.js';
import { growthByMonthAt, WATERED_MM, type GrassPlace } from '../../shared/checks/grass-growth.js';
import type { Tables } from '../../shared/tables/tables.js';
import type { ReadRows } from './read-rows.js';

const TOPIC = 'Growth of grass at measured places';
const FILE = 'grass-growth/growth_check_places.csv';
const MONTHS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Fewer measured months say little of a place. */
const LEAST_MONTHS = 6;

/** Sites whose growth light use and the start of spring were fitted on. */
const FITTED =
  /Devon|Changins|Wageningen|Grange|Massif|Braunschweig|Piedmont|Aberdeen|Cluj|Saerheim/;

/** Why a place lies beyond what is aimed at, by a part of its name. */
const BECAUSE: readonly (readonly [RegExp, string])[] = [
  [
    /Michamps/,
    'One trial year, 1984, whose spring came a month late; averages of twenty years stand for it.',
  ],
  [
    /Massif/,
    'A mountain place; the weather on record is that of a grid cell, lower and warmer than the trial.',
  ],
  [/Grange/, 'Two good years; a year of the same place differs by a quarter from the next.'],
  [
    /Piedmont|Cluj/,
    'One or two trial years; on warm springs of the inland growth begins a fortnight too early.',
  ],
  [/peat/, 'Peat gives nitrogen and water of its own, which no row of soils has.'],
  [
    /Norway|Scotland/,
    'The long days of a northern June make grass head and grow as the model does not know: it counts their light alone.',
  ],
  [/Serbia/, 'One trial year, 1984, in drought; its rain is not that of the averages.'],
  [
    /(Changins|Devon).*rainfed/,
    'Trial years with drought; their rain is not that of the averages.',
  ],
  [
    /Sierra/,
    'Annual grass that germinates in October and is dead in June; a perennial stands in for it.',
  ],
];

type Row = Readonly<Record<string, string>>;

/**
 * Growth of some thirty places against what a plan there goes by, from their averages of the months
 * alone: the year within 15 %, a month within 20 kg a hectare and day.
 */
export function grassChecks(read: ReadRows, tables: Tables): readonly Check[] {
  const byMonth = [new MonthErrors(), new MonthErrors()] as const;
  const ofPlaces = read(FILE).flatMap((row, k) => {
    const grown = MONTHS.map((month) => numberOf(row[`growth_${month}_kg_ha_day`]));
    const place = placeOf(row);
    const known = grown.filter((kg) => kg !== undefined).length;
    if (!place || known < LEAST_MONTHS) return [];
    const ours = growthByMonthAt(place, tables);
    const errors = grown.flatMap((kg, m) => (kg === undefined ? [] : [(ours[m]! - kg) ** 2]));
    const isFitted = FITTED.test(row['place']!);
    grown.forEach((kg, m) => {
      // A month of the south is that of the other half of the year.
      const month = place.latitudeDeg < 0 ? (m + 6) % 12 : m;
      if (kg !== undefined) byMonth[isFitted ? 0 : 1].add(month, ours[m]! - kg);
    });
    const name = `${row['place']}, ${row['sward']}, ${row['water']}${isFitted ? ' (fitted on)' : ''}`;
    const common = {
      source: 'GROWTH_PLACES',
      where: `line ${k + 2}`,
      mark: 'second-hand',
      unit: 'kgPerHa',
    } as const;
    const yearKg = numberOf(row['year_total_kg_ha']);
    const because = BECAUSE.find(([part]) => part.test(name))?.[1];
    const check = (of: Parameters<typeof compare>[1], value: number): Check => {
      const plain = compare(TOPIC, of, value);
      return because && plain.standing === 'beyond'
        ? compare(TOPIC, { ...of, disagreement: because }, value)
        : plain;
    };
    return [
      check(
        {
          ...common,
          id: `growth-months-${k}`,
          what: `Usual error of a month: ${name}`,
          theirs: 0,
          allowedAmount: 20,
          why: 'Published models reach 18 to 31.',
        },
        Math.sqrt(errors.reduce((a, b) => a + b, 0) / errors.length),
      ),
      ...(yearKg === undefined
        ? []
        : [
            check(
              {
                ...common,
                id: `growth-year-${k}`,
                what: `Growth of a year: ${name}`,
                theirs: yearKg,
                allowedShare: 0.15,
                why: 'Published models reach 13 to 21 %; years of a place differ by as much.',
              },
              ours.reduce((sum, kg, m) => sum + kg * MONTH_DAYS[m]!, 0),
            ),
          ]),
    ];
  });
  return [
    ...ofPlaces,
    ...byMonth[0].checks('places fitted on', 'fitted'),
    ...byMonth[1].checks('places not fitted on', 'not-fitted'),
  ];
}

/** Why a month lies off over all places, by the end of its id. */
const MONTHS_BECAUSE: Readonly<Record<string, string>> = {
  'fitted-apr':
    'By the averages of months growth begins too early where trial years had cold springs; watered stands are off as far. What is too much in April is too little in May.',
  'fitted-may':
    'The flush of heading grass under 600 kg of nitrogen is lower than measured, and a part of it comes in April; places not fitted on are off by a few kilograms in both months.',
  'fitted-jul':
    'Watered stands are off nearly as far, so that it is no lack of soil water: growth after heading is put too low.',
  'not-fitted-aug':
    'Watered stands are off as far, so that it is no lack of soil water: growth after heading is put too low.',
};

/** Fewer places say little of a month. */
const LEAST_PLACES = 4;

/** How far ours lies off in each month, over places: whether a month is off everywhere to one side. */
class MonthErrors {
  private readonly errors: number[][] = MONTHS.map(() => []);

  add(month: number, kg: number): void {
    this.errors[month]!.push(kg);
  }

  checks(where: string, id: string): Check[] {
    return this.errors.flatMap((errors, m) => {
      if (errors.length < LEAST_PLACES) return [];
      const because = MONTHS_BECAUSE[`${id}-${MONTHS[m]}`];
      const name = MONTHS[m]!.toUpperCase().slice(0, 1) + MONTHS[m]!.slice(1);
      return [
        compare(
          TOPIC,
          {
            id: `growth-${id}-${MONTHS[m]}`,
            what: `Mean error of ${name} (of the north; half a year on in the south), ${errors.length} ${where}`,
            source: 'GROWTH_PLACES',
            where: 'all lines',
            mark: 'second-hand',
            unit: 'kgPerHa',
            theirs: 0,
            allowedAmount: 10,
            why: 'Half of what a month of one place may be off: errors to both sides make it less.',
            ...(because === undefined ? {} : { disagreement: because }),
          },
          errors.reduce((a, b) => a + b, 0) / errors.length,
        ),
      ];
    });
  }
}

const numberOf = (text: string | undefined): number | undefined =>
  text === undefined || text === '' ? undefined : Number(text);

function placeOf(row: Row): GrassPlace | undefined {
  const months = (of: (month: string) => string): number[] | undefined => {
    const values = MONTHS.map((month) => numberOf(row[of(month)]));
    return values.some((value) => value === undefined) ? undefined : (values as number[]);
  };
  const minC = months((m) => `tmin_${m}_c`);
  const maxC = months((m) => `tmax_${m}_c`);
  const rainMm = months((m) => `rain_${m}_mm`);
  if (!minC || !maxC || !rainMm) return undefined;
  return {
    latitudeDeg: Number(row['lat']),
    minC,
    maxC,
    rainMm: row['water'] === 'irrigated' ? rainMm.map(() => WATERED_MM) : rainMm,
    ...swardOf(row['sward'] ?? '', row['fertility'] ?? ''),
  };
}

/** Ours that stands for a sward, and how well its ground yields. */
function swardOf(sward: string, fertility: string): Pick<GrassPlace, 'forageId' | 'productivity'> {
  const productivity = /600 kg/.test(fertility) ? 'high' : 'medium';
  if (/ryegrass/.test(sward)) return { forageId: 'ryegrass-clover', productivity };
  return { forageId: /fescue/.test(sward) ? 'tall-fescue' : 'mixed', productivity };
}
