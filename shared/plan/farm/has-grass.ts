import type { FarmPicture } from '../../farm/picture.js';

/** Whether there is anything to graze, and anybody to graze it. */
export const hasGrass = ({ paddocks, herds }: Pick<FarmPicture, 'paddocks' | 'herds'>): boolean =>
  0 < paddocks.length && 0 < herds.length;
