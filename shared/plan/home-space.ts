import type { Sourced } from '../explain/formula.js';
import { givenOrTable, type QuantityInput } from '../explain/quantity.js';
import type { Batch } from '../farm/batch.js';
import type { Ranged, SpaceStandards } from '../tables/bird-tables.js';
import type { Tables } from '../tables/tables.js';
import type { Life } from './life.js';

/** Floor that one bird is to have in its pen or coop after the move. */
export interface HomeSpace {
  readonly floorM2: number;
  readonly each: QuantityInput & { readonly value: number };
  /** What it rests on; nothing where the household gave its own figure. */
  readonly rows: readonly Sourced[];
  /** What sources leave open; left out with a figure of the household's own. */
  readonly range?: Ranged & { readonly because: string };
}

/** The household's own floor a bird, else that of a coop for hens, of a field pen for its kind. */
export function homeSpaceOf({
  batch,
  life,
  tables: { space },
}: {
  readonly batch: Batch;
  readonly life: Life;
  readonly tables: Tables;
}): HomeSpace {
  const own = batch.homeFloorM2;
  const usual = usualHomeSpace(batch.purpose, life.strain.species, space);
  const floorM2 = own ?? usual.floorM2;
  const each = givenOrTable(own !== undefined, usual, 'Floor a bird', floorM2, 'birdM2', 'a');
  return {
    floorM2,
    each: each as HomeSpace['each'],
    ...(own === undefined ? { rows: [usual], range: usual } : { rows: [] }),
  };
}

type Usual = Sourced & Ranged & { readonly floorM2: number; readonly because: string };

/** What is usual: for hens in a coop, for meat birds of a species in a field pen. */
export const usualHomeSpace = (
  purpose: Batch['purpose'],
  species: string | undefined,
  space: SpaceStandards,
): Usual => (purpose === 'meat' ? penSpace(species, space) : coopSpace(space));

function penSpace(species: string | undefined, { pen, otherPens }: SpaceStandards): Usual {
  const own = otherPens.find((each) => each.species === species) ?? pen;
  const { sources, mark, floorM2, low, high, because = 'sources differ' } = own;
  return { sources, mark, floorM2, low, high, because };
}

const coopSpace = ({ coop }: SpaceStandards): Usual => ({
  sources: coop.sources,
  mark: coop.mark,
  floorM2: coop.floorM2,
  low: coop.floorMinM2,
  high: coop.floorMaxM2,
  because: 'extension figures run from 1.5 to 3 ft² a hen',
});
