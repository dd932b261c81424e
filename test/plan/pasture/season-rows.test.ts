import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import {
  rowNotes,
  rowTitle,
  seasonRows,
  type HayRow,
  type MowRow,
  type SeasonRow,
  type ShutRow,
} from '../../../shared/plan/pasture/season-rows.js';
import {
  newGroup,
  newHerd,
  newPaddock,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { newBatch } from '../../support/factories.js';
import { plannedPasture } from '../../support/pictures.js';

type More = Parameters<typeof newPastureRequest>[0];
const planOf = (more: More): PasturePlan => plannedPasture(newPastureRequest(more));

const hens = {
  ...newBatch({ name: 'Hens', arrivalDate: '2027-04-07', moveOutDate: '2027-05-20' }),
  id: 'hens',
};
const plan = planOf({
  paddocks: newPaddocks(14, { areaM2: 4000, forageId: 'mixed' }),
  herds: [newHerd({ followedByBatchId: hens.id, followDays: 3 })],
  batches: [hens],
});
const rows = seasonRows(plan);
const of = <K extends SeasonRow['kind']>(kind: K, all = rows): Extract<SeasonRow, { kind: K }>[] =>
  all.filter((row): row is Extract<SeasonRow, { kind: K }> => row.kind === kind);

describe('seasonRows', () => {
  it('stand in the order of their days', () => {
    expect(rows.map((row) => row.from)).toEqual(rows.map((row) => row.from).sort());
  });

  it('say on every day of the plan where a herd is, once', () => {
    const seen: string[] = [];
    for (const row of [...of('graze'), ...of('hay')]) {
      for (let date = row.from; date <= row.to; date = addDays(date, 1)) seen.push(date);
    }
    const all = Array.from({ length: daysBetween(plan.from, plan.to) + 1 }, (_, day) =>
      addDays(plan.from, day),
    );
    expect(seen.sort()).toEqual(all);
  });

  it('mow on the day that the work has for it, and keep the paddock shut so much longer', () => {
    const [first] = of('mow');
    const { cut } = first!;
    const { key } = plan.mowingWork.find(
      ({ paddockIds, from }) => paddockIds.includes(cut.paddockId) && from === cut.mowFrom,
    )!;
    const laidOn = (on: string): MowRow => {
      const again = seasonRows(plan, new Map([[key, { on }]]));
      expect(again.map((row) => row.from)).toEqual(again.map((row) => row.from).sort());
      return of('mow', again).find(
        (row) => row.cut.paddockId === cut.paddockId && row.cut.mowFrom === cut.mowFrom,
      )!;
    };
    expect(laidOn(addDays(cut.mowFrom, 3))).toEqual({
      ...{ kind: 'mow', cut, isLaid: true },
      from: addDays(cut.mowFrom, 3),
      to: addDays(first!.to, 3),
    });
    // What lies before the grass is ready is no day to go by.
    expect(laidOn(addDays(cut.mowFrom, -1))).toEqual(first);
  });

  it('hold every stay, and begin and end with days on hay where winter does', () => {
    expect(of('graze').map((row) => row.move)).toEqual(plan.moves);
    const winter = planOf({
      paddocks: newPaddocks(4),
      herds: [newHerd({ groups: [newGroup({ head: 10 })] })],
    });
    const hay = of('hay', seasonRows(winter));
    const [first, last] = [hay[0]!, hay.at(-1)!];
    expect(first).toMatchObject({ from: winter.from, to: addDays(winter.moves[0]!.from, -1) });
    expect(last).toMatchObject({ from: addDays(winter.moves.at(-1)!.to, 1), to: winter.to });
  });

  it('feed what hayByDay feeds', () => {
    for (const each of [plan, short]) {
      const fed = seasonRows(each).reduce((kg, row) => kg + ('hayKg' in row ? row.hayKg : 0), 0);
      const byDay = each.herds.flatMap((herd) => herd.hayByDay).reduce((a, b) => a + b, 0);
      expect(fed).toBeCloseTo(byDay, 6);
    }
  });

  it('give the feed of a day as the mean of its days', () => {
    for (const row of of('hay')) {
      const first = daysBetween(plan.from, row.from);
      const byDay = plan.herds[0]!.hayByDay.slice(first, first + row.days);
      expect(row.perDay.value).toBeCloseTo(byDay.reduce((a, b) => a + b, 0) / row.days, 3);
      byDay.forEach((kg, i) => expect(kg).toBe(plan.herds[0]!.needByDay[first + i]));
    }
  });

  it('shut and mow each paddock of the surplus, and keep it shut while the hay dries', () => {
    expect(plan.surplus.length).toBeGreaterThan(0);
    const pairs: [ShutRow, MowRow][] = plan.surplus.map((cut) => [
      of('shut').find((row) => row.cut === cut)!,
      of('mow').find((row) => row.cut === cut)!,
    ]);
    for (const [shut, mow] of pairs) {
      expect(shut).toMatchObject({ from: shut.cut.shutFrom, to: shut.cut.cutOn });
      expect(mow.from).toBe(mow.cut.cutOn);
      expect(daysBetween(mow.from, mow.to)).toBe(4); // five days of drying, the first is the cut
    }
    expect(of('mow')).toHaveLength(plan.surplus.length);
  });

  it('hold every move of the birds', () => {
    expect(plan.birds.length).toBeGreaterThan(0);
    expect(of('birds').map((row) => row.move)).toEqual(plan.birds);
  });
});

describe('rowTitle and rowNotes', () => {
  it('say who goes where, or what is done to which paddock', () => {
    const titleOf = (kind: SeasonRow['kind']): string => rowTitle(plan, of(kind)[0]!);
    const nameOf = (id: string): string => plan.paddocks.find((own) => own.id === id)!.name;
    const cut = nameOf(plan.surplus[0]!.paddockId);
    expect(titleOf('graze')).toBe(`Cows into ${nameOf(plan.moves[0]!.paddockId)}`);
    expect(titleOf('hay')).toBe('Cows on hay');
    expect(titleOf('shut')).toBe(`Close ${cut} for hay`);
    expect(titleOf('mow')).toBe(`Mow ${cut}`);
    expect(titleOf('birds')).toBe(`Hens into ${nameOf(plan.birds[0]!.paddockId)}`);
  });

  it('mind grass that is short or rank, hay beside it, and wet ground under birds', () => {
    const [move] = plan.moves;
    const row = { kind: 'graze', from: move!.from, to: move!.to, hayKg: 0 } as const;
    const plain = { ...move!, entry: 'ready', strips: 1, isRank: false } as const;
    expect(rowNotes({ ...row, move: plain })).toEqual([]);
    const rank = { ...plain, entry: 'first-pass', strips: 2, isRank: true } as const;
    expect(rowNotes({ ...row, hayKg: 3, move: rank })).toEqual([
      'first quick pass',
      'in 2 strips, back fence',
      'rank',
      'feed hay too',
    ]);
    const [birds] = of('birds');
    const onGround = (isWet: boolean) => rowNotes({ ...birds!, move: { ...birds!.move, isWet } });
    expect([onGround(true), onGround(false)]).toEqual([['ground may be wet'], []]);
  });
});

/** Three times the cattle that the land feeds, and a second herd that comes later. */
const short = planOf({
  paddocks: newPaddocks(4),
  herds: [
    newHerd({ groups: [newGroup({ head: 12 })] }),
    newHerd({
      id: 'h2',
      name: 'Steers',
      groups: [newGroup({ classId: 'stocker', head: 3, arrivesOn: '2027-06-01' })],
    }),
  ],
  choices: { to: '2027-08-31' },
});

describe('seasonRows of land that is short', () => {
  const ofShort = seasonRows(short);

  it('go back to hay between stays', () => {
    const hay: HayRow[] = of('hay', ofShort).filter((row) => row.herdId === 'h1');
    expect(hay.length).toBeGreaterThanOrEqual(2);
  });

  it('feed no herd that is not there yet', () => {
    for (const row of of('hay', ofShort).filter((each) => each.herdId === 'h2'))
      expect(row.from >= '2027-06-01').toBe(true);
  });

  it('have no stay where no herd finds grass', () => {
    const shut = planOf({
      paddocks: [
        newPaddock({ closedDays: [{ from: '2027-04-01', to: '2027-12-31', why: 'reseeding' }] }),
      ],
    });
    // What stands may still be mown.
    const [row, ...more] = seasonRows(shut).filter(({ kind }) => kind !== 'shut' && kind !== 'mow');
    expect(more).toEqual([]);
    expect(row).toMatchObject({ kind: 'hay', from: shut.from, to: shut.to });
  });
});
