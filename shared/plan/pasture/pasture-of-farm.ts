import type { AnimalPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { contextAlone } from '../batch-request.js';
import { followerOf } from './follower.js';
import type { PastureRequest } from './pasture-request.js';

/** The pasture in the picture of its farm, with the birds that follow a herd. */
export function pastureOfFarm(picture: AnimalPicture, tables: Tables): PastureRequest {
  const { farm, climate, today, paddocks, herds, cows, readings, pastureChoices, batches } =
    picture;
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
      return (batch && followerOf(herd, contextAlone(picture, tables, batch))) ?? [];
    }),
    choices: pastureChoices,
  };
}
