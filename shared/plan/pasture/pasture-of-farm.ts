import type { AnimalPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { contextAlone } from '../batch-request.js';
import { followerOf } from './follower.js';
import type { PastureRequest } from './pasture-request.js';
import { pennedOf, standsIn } from './penned.js';

/** The pasture in the picture of its farm, with the birds that follow a herd or stand in it. */
export function pastureOfFarm(picture: AnimalPicture, tables: Tables): PastureRequest {
  const { farm, climate, today, paddocks, herds, cows, readings, pastureChoices, batches } =
    picture;
  const penned = pennedOf(picture, tables);
  return {
    farm,
    climate,
    today,
    paddocks,
    herds,
    cows,
    readings,
    ...(picture.grazings ? { grazings: picture.grazings } : {}),
    ...(picture.mowings ? { mowings: picture.mowings } : {}),
    tables,
    followers: herds.flatMap((herd) => {
      // A batch that is gone follows no herd any more.
      const batch = batches.find(({ id }) => id === herd.followedByBatchId);
      // Where it lives and when it leaves hangs on no other batch.
      // Birds that stand in one paddock follow nobody.
      if (!batch || standsIn(batch, picture)) return [];
      return followerOf(herd, contextAlone(picture, tables, batch)) ?? [];
    }),
    ...(penned.length === 0 ? {} : { penned }),
    choices: pastureChoices,
  };
}
