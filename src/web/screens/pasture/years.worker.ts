import type { FarmPicture } from '../../../../shared/farm/picture.js';
import { grassYears, type GrassYears } from '../../../../shared/plan/pasture/grass-years.js';
import type { Tables } from '../../../../shared/tables/tables.js';

export interface YearsAsked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
}
export type YearsAnswered = { readonly years: GrassYears } | { readonly failed: string };

/** Twenty seasons take some seconds on a phone: off the page's own thread. */
self.onmessage = ({ data: { picture, tables } }: MessageEvent<YearsAsked>) => {
  self.postMessage(answer(picture, tables));
};

function answer(picture: FarmPicture, tables: Tables): YearsAnswered {
  try {
    return { years: grassYears(picture, tables) };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}
