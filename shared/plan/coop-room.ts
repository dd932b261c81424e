import type { CoopShare } from '../farm/occupancy.js';
import { facilityOf, type Coop } from '../farm/facility.js';
import type { PlanContext } from './context.js';
import { homeSpaceOf } from './home-space.js';

/** What a flock of layers needs of its coop, and the coop that is chosen for it. */
export interface CoopRoom {
  readonly coop: Coop | undefined;
  /** Birds at the move. */
  readonly birds: number;
  /** Hens at the first egg. */
  readonly hens: number;
  readonly floorM2: number;
  readonly roostCm: number;
  readonly nests: number;
}

/** Floor and roost for the birds that move in, nests for the hens of the first egg. */
export function coopRoomOf(
  context: Pick<PlanContext, 'batch' | 'tables' | 'facilities' | 'life'>,
  moveOutDay: number,
): CoopRoom {
  const { batch, tables, facilities, life } = context;
  const per = tables.space.coop;
  const birds = life.aliveAll[moveOutDay]!;
  const hens = life.alive.female[(life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays]!;
  return {
    coop: facilityOf(facilities, 'coop', batch.coopId),
    birds,
    hens,
    floorM2: birds * homeSpaceOf(context).floorM2,
    roostCm: birds * per.roostCm,
    nests: Math.ceil(hens / per.hensPerNest - 1e-9),
  };
}

/** What a flock of layers takes of its coop on a day, for others that may go in with it. */
export function coopShareOf(
  context: Pick<PlanContext, 'batch' | 'tables' | 'facilities' | 'life'>,
  day: number,
): { readonly share?: CoopShare } {
  if (context.batch.purpose !== 'layers') return {};
  const { coop, birds, floorM2 } = coopRoomOf(context, day);
  return coop ? { share: { birds, floorM2, ofM2: coop.floorM2 } } : {};
}

/** What a coop has too little of; everything where there is none. */
export const shortOfCoop = ({
  coop,
  floorM2,
  roostCm,
  nests,
}: CoopRoom): { floor: boolean; roost: boolean; nests: boolean } => ({
  floor: (coop?.floorM2 ?? 0) < floorM2,
  roost: (coop?.roostM ?? 0) * 100 < roostCm,
  nests: (coop?.nestBoxes ?? 0) < nests,
});
