import { weakestMark, type Mark, type Sourced } from '../explain/formula.js';
import type { Tables } from './tables.js';
import { CHICKEN } from './tables.js';

/** Source and mark of a chickens' figure where it stands in for another kind of bird. */
const OF_CHICKENS: Sourced = { sources: ['OF_CHICKENS'], mark: 'estimate' };

const known = new WeakMap<Tables, Map<string, Tables>>();

/**
 * The tables as they hold for one kind of poultry. Where the kind has a row of its own it lies in
 * the place of the chickens'; where it has none, the chickens' row stands in, is no better than an
 * estimate, and names a source that says so. For chickens they are the tables as they are.
 */
export function tablesForKind(tables: Tables, species: string): Tables {
  if (species === CHICKEN) return tables;
  let ofTables = known.get(tables);
  if (!ofTables) known.set(tables, (ofTables = new Map()));
  let own = ofTables.get(species);
  if (!own) {
    ofTables.set(species, (own = build(tables, species)));
    // Handed on from plan to plan, they stay what they are.
    known.set(own, new Map([[species, own]]));
  }
  return own;
}

/** The tables for the kind of a strain; as they are for a strain that there is not, which is refused. */
export function tablesForStrain(tables: Tables, strainId: string): Tables {
  const strain = tables.strains.find(({ id }) => id === strainId);
  return strain ? tablesForKind(tables, strain.species) : tables;
}

function build(tables: Tables, species: string): Tables {
  const { heat, space, water, manure, nights, orders, growing, processing } = tables;
  const ownOr = <T extends Sourced>(rows: readonly (T & { species: string })[], row: T): T =>
    rows.find((each) => each.species === species) ?? standingIn(row);
  return {
    ...tables,
    heat: {
      ...heat,
      birds: standingIn(heat.birds),
      ventilation: standingIn(heat.ventilation),
      zone: standingIn(heat.zone),
      lamps: standingIn(heat.lamps),
      tooHot: standingIn(heat.tooHot),
      lampRule: standingIn(heat.lampRule),
      plate: standingIn(heat.plate),
      gasRule: standingIn(heat.gasRule),
      rules: heat.rules.map(standingIn),
    },
    space: {
      ...space,
      penMoves: standingIn(space.penMoves),
      liveWeightCapKgPerM2: standingIn(space.liveWeightCapKgPerM2),
    },
    water: { ...water, heat: ownOr(water.otherHeat, water.heat) },
    manure: { ...manure, meat: ownOr(manure.others, manure.meat) },
    nights: { ...nights, coldFeed: standingIn(nights.coldFeed) },
    orders: { ...orders, togetherness: standingIn(orders.togetherness) },
    growing: {
      best: standingIn(growing.best),
      heat: standingIn(growing.heat),
      cold: standingIn(growing.cold),
      evenness: standingIn(growing.evenness),
    },
    processing: {
      ...processing,
      waterUptake: standingIn(processing.waterUptake),
      withdrawalH: standingIn(processing.withdrawalH),
      scalding: standingIn(processing.scalding),
      chilling: {
        ...processing.chilling,
        iceWater: standingIn(processing.chilling.iceWater),
      },
    },
    litter: standingIn(tables.litter),
    heatStress: standingIn(tables.heatStress),
    // Hours of the last day were printed for chickens: feathers of ducks take longer.
    taskTemplates: tables.taskTemplates.map((template) =>
      template.event === 'processing' ? standingIn(template) : template,
    ),
  };
}

/** A row that answers with the chickens' values, as an estimate that says whose they are. */
function standingIn<T extends Sourced>(row: T): T {
  const copy = {} as T;
  for (const key of Object.keys(row) as (keyof T & string)[]) {
    const get: () => unknown = /(^m|M)ark$/.test(key)
      ? () => weakestMark(row[key] as Mark, OF_CHICKENS.mark)
      : /(^s|S)ources$/.test(key)
        ? () => [...(row[key] as readonly string[]), ...OF_CHICKENS.sources]
        : () => row[key];
    Object.defineProperty(copy, key, { enumerable: true, get });
  }
  return copy;
}
