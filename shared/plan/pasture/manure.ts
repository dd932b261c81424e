import type { Formula } from '../../explain/formula.js';
import { daysBetween } from '../../calendar/plain-date.js';
import {
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { found, type Found } from '../found.js';
import { bedIssues, type StoodThere } from './beds.js';
import { pastStays, type PastureContext } from './pasture-context.js';
import { manureRows } from './pasture-support.js';
import type { Penned } from './penned.js';

export const manureFormulas = {
  nitrogen: {
    id: 'paddock-nitrogen',
    title: 'Manure nitrogen of the plan',
    words:
      'Nitrogen that herds and birds drop while in the paddock. A third or more can be lost to the air.',
    symbols: 'N = Σ days·live weight·n ÷ A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  phosphorus: {
    id: 'paddock-phosphorus',
    title: 'Manure phosphorus of the plan',
    words: 'Elemental phosphorus dropped while in the paddock; times 2.29 for phosphate.',
    symbols: 'P = Σ days·live weight·p ÷ A',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Birds in a paddock after a herd. */
export interface BirdMove {
  readonly name: string;
  readonly paddockId: string;
  readonly from: string;
  readonly to: string;
  readonly isWet: boolean;
}

export interface ManurePart {
  readonly nitrogen: readonly NumberQuantity[];
  readonly phosphorus: readonly NumberQuantity[];
  readonly birds: readonly BirdMove[];
}

/** Where birds follow the herds, and the nutrients that both leave in each paddock. */
export function planManure(context: PastureContext, books: SeasonBooks): Found<ManurePart> {
  const { paddocks, herdDays, tables } = context;
  const n = new Float64Array(paddocks.length);
  const p = new Float64Array(paddocks.length);
  for (const stay of books.stays) {
    const days = herdDays[stay.herd]!;
    for (let i = stay.from; i < stay.from + stay.days; i++) {
      n[stay.paddock]! += days.nitrogenKg[i]!;
      p[stay.paddock]! += days.phosphorusKg[i]!;
    }
  }
  const moves = followBirds(context, books);
  for (const { paddock, nitrogenKg, phosphorusKg } of moves) {
    n[paddock]! += nitrogenKg;
    p[paddock]! += phosphorusKg;
  }
  for (const [paddock, { days, nitrogenKgPerDay, phosphorusKgPerDay }] of standing(context)) {
    n[paddock]! += days * nitrogenKgPerDay;
    p[paddock]! += days * phosphorusKgPerDay;
  }
  const birds = moves.map((each) => each.move);
  const issues = [
    ...onWetGround(context, birds),
    ...bedIssues(context, stoodThere(context, books, moves)),
  ];
  const limit = tables.pasture.nitrogenLimitKgPerHa;
  const rows = [
    context.order,
    ...manureRows(tables, context.herds),
    ...context.followers.flatMap(({ rows: of = [] }) => of),
    ...(context.penned ?? []).flatMap(({ rows: of }) => of),
  ];
  const perHa = (kg: number, areaM2: number): number => (kg * 10_000) / areaM2;
  const over = paddocks.filter((own, i) => limit.value < perHa(n[i]!, own.areaM2));
  if (0 < over.length) {
    issues.push(
      issue(
        'act',
        'nitrogen-over',
        `${over.map((own) => own.name).join(', ')}: manure nitrogen passes ${context.say(limit.value, 'kgPerHa')} in the plan, more than most grass can use. Spread the birds over more ground.`,
        [limit],
      ),
    );
  }
  const of = (label: string, kg: Float64Array, formula: Formula): NumberQuantity[] =>
    paddocks.map((own, i) =>
      quantity(
        label,
        perHa(kg[i]!, own.areaM2),
        'kgPerHa',
        formula,
        [
          input('In all', kg[i]!, 'kg'),
          fromFarm('Area', own.areaM2, 'ha', 'A'),
          fromTable(limit, 'Limit to keep to', limit.value, 'kgPerHa'),
          fromTable(limit, `Least, as ${limit.because}`, limit.low, 'kgPerHa'),
          fromTable(limit, 'Most', limit.high, 'kgPerHa'),
        ],
        { rows },
      ),
    );
  const part: ManurePart = {
    nitrogen: of('Manure nitrogen', n, manureFormulas.nitrogen),
    phosphorus: of('Manure phosphorus', p, manureFormulas.phosphorus),
    birds,
  };
  return found(part, { issues });
}

/** Birds that stand in one paddock, and the days of the plan on which they do. */
const standing = ({
  penned = [],
  paddocks,
  span,
}: PastureContext): [number, Pick<Penned, 'days' | 'nitrogenKgPerDay' | 'phosphorusKgPerDay'>][] =>
  penned.map((birds) => {
    const from = Math.max(span.from, daysBetween(span.first, birds.from));
    const to = Math.min(span.to, daysBetween(span.first, birds.leaveOn));
    const paddock = paddocks.findIndex(({ id }) => id === birds.paddockId);
    return [paddock, { ...birds, days: Math.max(0, to - from) }];
  });

/** Last days of all that stands in the paddocks: herds before and in the plan, birds behind them. */
function stoodThere(
  context: PastureContext,
  { stays }: SeasonBooks,
  birds: readonly Following[],
): StoodThere[] {
  const { span, dateOf } = context;
  return [
    ...[...pastStays(context), ...stays].map(({ paddock, from, days }) => ({
      paddock,
      last: dateOf(Math.min(from + days, span.to) - 1),
    })),
    ...birds.map(({ paddock, move }) => ({ paddock, last: move.to })),
  ];
}

/** Birds on a paddock, and what they leave there. */
interface Following {
  readonly move: BirdMove;
  readonly paddock: number;
  readonly nitrogenKg: number;
  readonly phosphorusKg: number;
}

function followBirds(context: PastureContext, books: SeasonBooks): Following[] {
  const { followers, herds, span, grass, tables, paddocks, dateOf } = context;
  const wetMm = tables.pasture.wetGround.drierThanFieldCapacityMm;
  return followers.flatMap((follower): Following[] => {
    const herd = herds.findIndex((h) => h.id === follower.herdId);
    const first = daysBetween(span.first, follower.from);
    const last = daysBetween(span.first, follower.to);
    let free = first;
    return books.stays
      .filter((stay) => stay.herd === herd)
      .flatMap((stay): Following[] => {
        // It follows strip by strip. One flock is in one place: it comes later where it is busy.
        const firstStrip = stay.from + Math.ceil(stay.days / stay.strips);
        const from = Math.max(free, firstStrip + follower.lagDays);
        const wanted = Math.min(last, firstStrip + stay.days + follower.lagDays - 1);
        const to = lastOpenDay(closedOn(context, books, stay.paddock), from, wanted);
        if (to < from || span.to <= wanted) return [];
        free = to + 1;
        const depletion = grass.swards[stay.paddock]!.depletionMm;
        return [
          {
            move: {
              name: follower.name,
              paddockId: paddocks[stay.paddock]!.id,
              from: dateOf(from),
              to: dateOf(to),
              isWet: depletion !== undefined && depletion[from]! < wetMm,
            },
            paddock: stay.paddock,
            nitrogenKg: (to - from + 1) * follower.nitrogenKgPerDay,
            phosphorusKg: (to - from + 1) * follower.phosphorusKgPerDay,
          },
        ];
      });
  });
}

/** Whether a paddock is closed on a day, by the household or for hay. */
function closedOn(
  { grass }: PastureContext,
  { cuts }: SeasonBooks,
  p: number,
): (day: number) => boolean {
  const { isClosed } = grass.swards[p]!.sward;
  const shut = cuts.filter(({ paddock }) => paddock === p);
  return (day) =>
    isClosed[day] === 1 || shut.some(({ shutFrom, openFrom }) => shutFrom <= day && day < openFrom);
}

/** Birds leave before a paddock closes, and do not go into one that is closed. */
function lastOpenDay(isClosed: (day: number) => boolean, from: number, wanted: number): number {
  let to = from - 1;
  while (to < wanted && !isClosed(to + 1)) to++;
  return to;
}

function onWetGround({ tables }: PastureContext, moves: readonly BirdMove[]): PlanIssue[] {
  const wet = moves.filter((move) => move.isWet);
  return wet.length === 0
    ? []
    : [
        issue(
          'note',
          'birds-on-wet-ground',
          `On ${wet.length} of ${moves.length} moves the ground is expected to be near field capacity when the birds come. Hold them a day or two where boots leave a print.`,
          [tables.pasture.wetGround],
        ),
      ];
}
