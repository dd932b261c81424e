import type { Batch } from '../farm/batch.js';

/** A way to get all of them processed, and what choosing it writes into the batch. */
export interface ProcessingWay {
  readonly id: 'planned' | 'helpers' | 'grow-on' | 'fewer' | 'hired';
  readonly words: string;
  /** Left out of the planned one. */
  readonly chosenBy?: Pick<
    Partial<Batch>,
    'processing' | 'processingHelpers' | 'processingWeekday' | 'leaveAgeDays' | 'wantedBirds'
  > & { readonly targetLiveKg?: undefined };
}
