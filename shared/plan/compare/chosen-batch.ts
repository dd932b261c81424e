import { addDays } from '../../calendar/plain-date.js';
import type { BatchChoice } from '../../farm/batch-choice.js';
import {
  withBatch,
  type AnimalPicture,
  type FarmPicture,
  type NamedBatch,
} from '../../farm/picture.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { bagOf } from '../prices.js';

/** A farm with a batch raised another way, and the batches that it then is. */
export interface ChosenBatches {
  readonly picture: FarmPicture;
  readonly batchIds: readonly string[];
}

/** Of a second half batch; no saved batch has it. */
const SECOND = 'second-half';
const WEEK = 7;

/**
 * The farm with a batch raised another way. What follows from what is changed is worked out anew:
 * another breed has its own growth, feeds and age, another number its own order.
 */
export function chosenBatches(
  picture: FarmPicture,
  batch: NamedBatch,
  choice: BatchChoice,
  tables: Pick<Tables, 'strains' | 'feedPrograms' | 'feedKeeping'>,
): ChosenBatches {
  const { twoWeeksApart, ownMixPerBag, ...more } = choice;
  const chosen = chosenBatch(batch, more);
  const whole =
    ownMixPerBag === undefined ? chosen : ofOwnMix(picture, chosen, { ownMixPerBag, tables });
  const untold = withoutTold(picture, batch.id);
  if (twoWeeksApart === undefined)
    return { picture: withBatch(untold, whole), batchIds: [batch.id] };
  const first = { ...resized(whole), wantedBirds: Math.ceil(whole.wantedBirds / 2) };
  const second: NamedBatch = {
    ...undated(resized(whole)),
    id: SECOND,
    name: `${whole.name}, second half`,
    wantedBirds: Math.max(1, Math.floor(whole.wantedBirds / 2)),
    arrivalDate: addDays(whole.arrivalDate, WEEK * twoWeeksApart),
  };
  return {
    picture: withBatch(withBatch(untold, first), second),
    batchIds: [batch.id, SECOND],
  };
}

function chosenBatch(
  batch: NamedBatch,
  more: Omit<BatchChoice, 'twoWeeksApart' | 'ownMixPerBag'>,
): NamedBatch {
  const { wantedBirds, strainId, feedProgramId, arrivalDate, leaveAgeDays } = more;
  let chosen = batch;
  if (strainId !== undefined && strainId !== batch.strainId) chosen = ofBreed(chosen, strainId);
  if (wantedBirds !== undefined && wantedBirds !== batch.wantedBirds)
    chosen = { ...resized(chosen), wantedBirds };
  if (feedProgramId !== undefined) chosen = { ...chosen, feedProgramId };
  if (arrivalDate !== undefined && arrivalDate !== batch.arrivalDate)
    chosen = { ...undated(chosen), arrivalDate };
  if (leaveAgeDays !== undefined) {
    const { targetLiveKg: _target, slotDate: _slot, slotBirds: _birds, ...rest } = chosen;
    chosen = { ...rest, leaveAgeDays };
  }
  return chosen;
}

/** Every feed at the price of the household's own mix, in bags of the size that is bought now. */
function ofOwnMix(
  { farm, products }: FarmPicture,
  batch: NamedBatch,
  {
    ownMixPerBag,
    tables,
  }: {
    ownMixPerBag: string;
    tables: Pick<Tables, 'strains' | 'feedPrograms' | 'feedKeeping'>;
  },
): NamedBatch {
  const { feedProgram } = rowById(tables.strains, batch.strainId);
  const { phases } = rowById(
    tables.feedPrograms,
    batch.feedProgramId ?? feedProgram[batch.purpose]!,
  );
  const { bagKg } = bagOf({ farm, batch, products, tables }, phases.at(-1)!.id);
  const feedPerBag = Object.fromEntries(phases.map(({ id }) => [id, ownMixPerBag]));
  return { ...batch, bagKg, prices: { ...batch.prices, feedPerBag } };
}

function resized(batch: NamedBatch): NamedBatch {
  const { orderedBirds: _ordered, eggsSet: _eggs, slotBirds: _birds, ...rest } = batch;
  return rest;
}

function undated(batch: NamedBatch): NamedBatch {
  const {
    orderDate: _order,
    moveOutDate: _out,
    slotDate: _slot,
    slotBirds: _birds,
    ...rest
  } = batch;
  return rest;
}

function ofBreed(batch: NamedBatch, strainId: string): NamedBatch {
  const {
    growthTableId: _growth,
    layCurveId: _lay,
    feedProgramId: _feeds,
    moveOutRuleId: _rule,
    spaceStandardId: _space,
    broodingScheduleId: _brooding,
    homeFloorM2: _floor,
    weightFactor: _weight,
    feedFactor: _feed,
    dressingShare: _dressing,
    leaveAgeDays: _age,
    targetLiveKg: _target,
    ownEggsPerHen: _eggs,
    ...rest
  } = batch;
  return { ...rest, strainId };
}

/** What was told of the batch so far says nothing of one raised another way. */
function withoutTold(picture: FarmPicture, batchId: string): FarmPicture {
  const others = <T extends { readonly batchId: string }>(told: readonly T[]): readonly T[] =>
    told.filter((each) => each.batchId !== batchId);
  return {
    ...picture,
    headChanges: others(picture.headChanges),
    weighings: others(picture.weighings),
    eggCounts: others(picture.eggCounts),
    ...(picture.feedOpenings ? { feedOpenings: others(picture.feedOpenings) } : {}),
    ...(picture.heatOuts ? { heatOuts: others(picture.heatOuts) } : {}),
  };
}

/** Whether anything was told of a batch that a comparison leaves out. */
export const wasTold = (picture: AnimalPicture, batchId: string): boolean =>
  [
    ...[picture.headChanges, picture.weighings, picture.eggCounts],
    ...[picture.feedOpenings ?? [], picture.heatOuts ?? []],
  ].some((told) => told.some((each) => each.batchId === batchId));
