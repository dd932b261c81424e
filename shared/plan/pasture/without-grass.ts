import { listed } from '../../units/listed.js';
import { lostDays } from './grass-over.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

/** No cool-season grass grows where no day is warmer than that on average, °C. */
const COLD_C = 5;

/** Why a herd finds no grass in the whole plan, and what helps. */
export function withoutGrass(context: PastureContext, { books }: Chosen, herd: string): string {
  const { grass, weather, span, tables, say, dateOf } = context;
  const look =
    'Look whether the months under Your place are right, or choose a grass that stands it.';
  // The year up to today counts too: in late fall the grass is over, not unfit for the place.
  const days = Array.from({ length: span.to }, (_, day) => day);
  const until = say(dateOf(span.to - 1), 'date');
  const isTall = grass.swards.some(({ sward }, p) =>
    days.some((day) => sward.firstPassKgPerHa <= books.massKgPerHa[p]![day]!),
  );
  const { minC, maxC } = weather.expected;
  const isCold = days.every((day) => (minC[day]! + maxC[day]!) / 2 < COLD_C);
  if (!isTall) {
    const names = [...new Set(grass.swards.map(({ forage }) => forage.name.toLowerCase()))];
    return `Nothing grows tall enough to graze here before ${until}: by the temperatures and rain of this farm it is too ${isCold ? 'cold' : 'hot or too dry'} for ${listed(names, 'and')}. ${herd} need hay for the whole time. ${look}`;
  }
  if (
    days
      .slice(span.from)
      .every((day) => grass.swards.every(({ sward }) => sward.isClosed[day] === 1))
  )
    return `Every paddock is closed until ${until}: ${herd} need hay for the whole time. Open one under Paddocks and herds.`;
  // It was read or typed as tall, and never grows again.
  if (isCold)
    return `It is too cold here for grass to grow on any day before ${until}: ${herd} need hay for the whole time. ${look}`;
  if (tables.judgements.grazing.backFromHayDays.value < lostDays(context, span.from))
    return `It is too hot or too dry for any paddock to be tall enough again before ${until}: ${herd} need hay for the whole time. ${look}`;
  return `No paddock is tall enough, rested and free for ${herd} before ${until}. Add paddocks, take head off, or feed hay for the whole time.`;
}
