import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Seen } from '../../shared/farm/seen.js';
import { holding, type ToldFact } from '../../shared/farm/told-fact.js';
import { placeAmong } from '../../shared/farm/told-seen.js';

type Rule = 'the-one-of-that-day' | 'the-same-of-its-work' | 'none';
interface Entry {
  readonly phone: number;
  readonly about: string;
  readonly on: string;
  readonly heads: number;
  /** What a tick told as brought home from the trip that it is about. */
  readonly name?: string;
}

/** Both phones were last read before anything was told. */
const UNTIL = '2027-04-20T00:00:00.000Z';

/** Sends entries in an order; where two clash, the question is answered by what they say alone. */
function recordOf(entries: readonly Entry[], rule: Rule) {
  const facts: ToldFact[] = [];
  let asked = 0;
  entries.forEach(({ phone, about, on, heads, name }, k) => {
    const key = `${phone}-${k}`;
    const own = facts.filter((fact) => fact.key.startsWith(`${phone}-`)).map((fact) => fact.key);
    const bought = { work: about, what: 'feed', name, amount: heads, eachKg: 22.68 };
    const details = name === undefined ? { heads } : bought;
    const seen: Seen = { until: UNTIL, ownKeys: own };
    const told = facts.filter((fact) => fact.about === about);
    let place = placeAmong(told, { on, details, seen }, rule);
    if (typeof place === 'object' && 'clashesWith' in place) {
      asked += 1;
      const theirs = place.clashesWith;
      // The higher count is said to hold, and of two the later day, whoever is asked.
      const other = entries[Number(theirs.id.slice(1))]!;
      if (heads < other.heads || (heads === other.heads && on < other.on)) return;
      const known = { until: theirs.toldAt, ownKeys: own };
      place = placeAmong(told, { on, details, seen: known }, rule);
    }
    if (typeof place !== 'object' || 'clashesWith' in place) throw new Error('asked twice');
    facts.push({
      ...{ id: `f${k}`, kind: 'weighed', about, on, details, key },
      toldAt: `2027-04-21T00:00:00.${String(k).padStart(3, '0')}Z`,
      ...(place.replaces ? { replaces: place.replaces.id } : {}),
    } as unknown as ToldFact);
  });
  const held = holding(facts)
    .map(({ about, on, details }) => JSON.stringify([about, on, details]))
    .sort();
  return { held, asked };
}

const entry = (phone: number): fc.Arbitrary<Entry> =>
  fc.record({
    phone: fc.constant(phone),
    about: fc.constantFrom('hens', 'broilers'),
    on: fc.constantFrom('2027-04-21', '2027-04-22', '2027-04-23'),
    heads: fc.integer({ min: 1, max: 30 }),
  });
/** A phone tells each thing of a day once. */
const phoneOf = (phone: number): fc.Arbitrary<Entry[]> =>
  fc.uniqueArray(entry(phone), { selector: ({ about, on }) => `${about} ${on}`, maxLength: 6 });
/** What two phones tell: one after the other, and in some other order. */
function inAnyOrder(of: (phone: number) => fc.Arbitrary<Entry[]>) {
  return fc
    .tuple(of(1), of(2))
    .chain(([a, b]) =>
      fc.tuple(
        fc.constant([...a, ...b]),
        fc.shuffledSubarray([...a, ...b], { minLength: a.length + b.length }),
      ),
    );
}
const mixed = inAnyOrder(phoneOf);

/** A phone that ticks a trip off tells each of its lines once, all of one day. */
const ticksOf = (phone: number): fc.Arbitrary<Entry[]> =>
  fc
    .tuple(
      fc.uniqueArray(fc.constantFrom('Starter', 'Grower', 'Grit'), { minLength: 1 }),
      fc.constantFrom('2027-04-21', '2027-04-22'),
      fc.array(fc.integer({ min: 6, max: 8 }), { minLength: 3, maxLength: 3 }),
    )
    .map(([names, on, bags]) =>
      names.map((name, k) => ({ phone, about: 'batch/b/fetch', on, name, heads: bags[k]! })),
    );
const ticks = inAnyOrder(ticksOf);
const saysOther = (a: Entry, b: Entry): boolean => a.on !== b.on || a.heads !== b.heads;

describe('what two phones told without signal', () => {
  it('is the same record in whatever order it comes, where facts add up', () => {
    fc.assert(
      fc.property(mixed, ([inTurn, shuffled]) => {
        const record = recordOf(shuffled, 'none');
        expect(record).toEqual(recordOf(inTurn, 'none'));
        expect(record.asked).toBe(0);
        expect(record.held).toHaveLength(inTurn.length);
      }),
    );
  });

  it('is the same record where one replaces another, once those that differ are asked about', () => {
    fc.assert(
      fc.property(mixed, ([inTurn, shuffled]) => {
        const record = recordOf(shuffled, 'the-one-of-that-day');
        expect(record).toEqual(recordOf(inTurn, 'the-one-of-that-day'));
        const pairs = inTurn.filter((a) =>
          inTurn.some(
            (b) => b.phone < a.phone && b.about === a.about && b.on === a.on && b.heads !== a.heads,
          ),
        );
        expect(record.asked).toBe(pairs.length);
      }),
    );
  });

  it('is one purchase of a trip that both ticked off, asked about where they bought otherwise', () => {
    fc.assert(
      fc.property(ticks, ([inTurn, shuffled]) => {
        const record = recordOf(shuffled, 'the-same-of-its-work');
        expect(record).toEqual(recordOf(inTurn, 'the-same-of-its-work'));
        const lines = new Set(inTurn.map(({ name }) => name));
        expect(record.held).toHaveLength(lines.size);
        const pairs = inTurn.filter((a) =>
          inTurn.some((b) => b.phone < a.phone && b.name === a.name && saysOther(a, b)),
        );
        expect(record.asked).toBe(pairs.length);
      }),
    );
  });
});
