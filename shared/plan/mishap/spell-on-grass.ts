import type { FarmPicture } from '../../farm/picture.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { moreFeedSaid, nextOf } from './paddock-lost.js';

/** What a spell changes in the plan of the grass once it is kept as forecast; nothing where nothing moves. */
export const saySpellOnGrass = (
  picture: FarmPicture,
  before: PasturePlan,
  after: PasturePlan,
): string[] => [...nextOf(picture, before, after), ...moreFeedSaid(before, after, picture)];
