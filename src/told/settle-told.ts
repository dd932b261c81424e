import type { EntityManager } from 'typeorm';
import { HEAD_CHANGES } from '../../shared/farm/head-count.js';
import {
  changesHeads,
  headChangesOf,
  type CattleWent,
  type EggsWereCounted,
  type FactOf,
  type HeadsChanged,
  type HerdMove,
  type ToldFact,
} from '../../shared/farm/told-fact.js';
import type { Tables } from '../../shared/tables/tables.js';
import {
  refuseStrangeArrivals,
  refuseStrangeCalves,
  refuseStrangeMilk,
  refuseStrangeWater,
} from './check-amounts.js';
import { settleCattle } from './check-cattle.js';
import { refuseStrangeEggs, refuseStrangeEggsGone } from './check-eggs.js';
import { refuseStrangeFeed } from './check-feed.js';
import { settleHeads } from './check-heads.js';
import { settlePhotos } from './check-photos.js';
import { settlePlaces } from './check-places.js';
import { refuseHeavyProcessed, refuseStrangeWeights } from './check-weights.js';
import { refuseUnknownWork } from './check-work.js';
import type { FactsOfFarm } from './facts-of-farm.js';
import type { NamesOfFarm } from './names-of-farm.js';

/** What was told or taken back in a write. */
interface ToldNow {
  readonly told: readonly ToldFact[];
  /** They were told; otherwise taken back. */
  readonly areNew: boolean;
  readonly facts: Pick<FactsOfFarm, 'factsOf' | 'factsAbout'>;
  /** All moves of the farm, with those that were told now; undefined: some were taken back. */
  readonly movesWith: (told: readonly HerdMove[] | undefined) => Promise<readonly HerdMove[]>;
  readonly namesOf: () => Promise<NamesOfFarm>;
  readonly tables: Tables;
}

/** What hangs on all that was told: where herds stand, how many birds there are. */
export async function settleTold(
  manager: EntityManager,
  farmId: string,
  { told, areNew, facts, movesWith, namesOf, tables }: ToldNow,
  fieldOf: (fact: ToldFact, field: string) => string,
): Promise<void> {
  const moved = told.filter((fact): fact is HerdMove => fact.kind === 'herd-move');
  if (0 < moved.length) {
    const all = await movesWith(areNew ? moved : undefined);
    const field = fieldOf(moved[0]!, 'details.paddockId');
    const names = await namesOf();
    await settlePlaces(manager, farmId, { changed: moved, all, names }, field);
  }
  const eggs = told.filter((fact): fact is EggsWereCounted => fact.kind === 'eggs-counted');
  await refuseStrangeEggs(manager, farmId, { eggs, tables }, fieldOf);
  if (areNew) {
    await refuseUnknownWork(manager, farmId, { told, namesOf, tables }, fieldOf);
    const calved = told.filter((fact) => fact.kind === 'calved');
    await refuseStrangeCalves(manager, farmId, calved, fieldOf);
    const drunk = told.filter((fact) => fact.kind === 'water-drunk');
    await refuseStrangeWater(manager, farmId, drunk, fieldOf);
    const arrived = told.filter((fact) => fact.kind === 'arrived');
    await refuseStrangeArrivals(manager, farmId, arrived, fieldOf);
    const milked = told.filter((fact) => fact.kind === 'milked');
    await refuseStrangeMilk(manager, farmId, { milked, tables }, fieldOf);
    const went = told.filter((fact) => fact.kind === 'eggs-gone');
    await refuseStrangeEggsGone(manager, farmId, { went, tables }, fieldOf);
    const processed = told.filter((fact) => fact.kind === 'processed');
    await refuseHeavyProcessed(manager, farmId, { processed, tables }, fieldOf);
  }
  const weighed = areNew ? told.filter((fact) => fact.kind === 'weighed') : [];
  const fed = areNew
    ? told.filter((fact) => fact.kind === 'feed-opened' || fact.kind === 'brooder-seen')
    : [];
  const heads: HeadsChanged[] = [];
  for (const id of new Set([...weighed, ...fed].map(({ about }) => about)))
    heads.push(...(await facts.factsAbout(farmId, id, HEAD_CHANGES)));
  const known = { weighed, heads: headChangesOf(heads), tables };
  await refuseStrangeWeights(manager, farmId, known, fieldOf);
  const given = { told: fed, heads: known.heads, tables };
  await refuseStrangeFeed(manager, farmId, given, fieldOf);
  const notes = told.filter((fact): fact is FactOf<'note'> => fact.kind === 'note');
  await settlePhotos(manager, farmId, notes, fieldOf);
  const left = told.filter((fact): fact is CattleWent => fact.kind === 'cattle-left');
  if (0 < left.length) {
    const all = await facts.factsOf(farmId, 'cattle-left');
    const now = areNew ? { told: left, back: [] } : { told: [], back: left };
    await settleCattle(manager, farmId, { ...now, all }, fieldOf);
  }
  const counted = told.filter(changesHeads);
  if (0 < counted.length) {
    const all: HeadsChanged[] = [];
    for (const id of new Set(counted.map(({ about }) => about)))
      all.push(...(await facts.factsAbout(farmId, id, HEAD_CHANGES)));
    await settleHeads(manager, farmId, { changed: counted, all, tables }, fieldOf);
  }
}
