import type { FarmPicture } from '../../farm/picture.js';
import { hasCattle } from '../../pasture/herd-demand.js';
import type { Tables } from '../../tables/tables.js';
import { planBatch } from '../batch-plan.js';
import { cattleInCold } from './cold-cattle.js';
import { coldSnap, planned } from './cold-snap.js';
import { heatWave } from './heat-wave.js';
import { cattleInHeat } from './hot-cattle.js';
import type { Spell } from './typed-weather.js';
import type { Mishap } from './way-on.js';

/** Cold nights or hot days: whom they hurt, birds first. */
export const inSpell = (picture: FarmPicture, tables: Tables, spell: Spell): Mishap[] =>
  spell.kind === 'hot'
    ? [...heatWave(picture, tables, spell), ...cattleInHeat(picture, tables, spell)]
    : [...coldSnap(picture, tables, spell), ...cattleInCold(picture, tables, spell)];

/** What is said where a spell hurts none: only of animals that are there and were looked at. */
export function noneHurtSaid(picture: FarmPicture, tables: Tables): string {
  const { today } = picture;
  const come = picture.batches.filter(({ arrivalDate }) => arrivalDate <= today);
  const plans = come.map(({ id, name }) => ({
    name,
    plan: planned(() => planBatch(picture, tables, id)),
  }));
  const unknown = plans.flatMap(({ name, plan }) => (plan ? [] : [name]));
  const isAnyThere =
    plans.some(
      ({ plan }) => plan && today <= String(plan.leaving?.on.value ?? plan.lastDate),
    ) ||
    picture.herds.some((herd) => hasCattle(herd, today));
  const left = `Not looked at, as no plan can be made: ${unknown.join(', ')}.`;
  if (isAnyThere)
    return unknown.length === 0
      ? 'Nothing that is there is hurt by it.'
      : `${left} Nothing else that is there is hurt by it.`;
  return unknown.length === 0 ? 'No birds and no cattle are there today.' : left;
}
