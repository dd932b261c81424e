import type { TellsOf } from '../rows/tell-row.js';
import { toCow, type CowEntity } from './cow.entity.js';

/** What was given to her herd goes with her where she goes: her herds are part of the record. */
export const COWS_TELL: TellsOf<CowEntity> = {
  of: 'cow',
  fields: (row) => ({ ...toCow(row) }),
  name: (row) => row.name,
};
