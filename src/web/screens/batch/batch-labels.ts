import type { Batch, Purpose } from '../../../../shared/farm/batch.js';
import type { Reader } from '../../../../shared/units/format.js';
import { labelsFrom } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';

/** What is printed at each field of the order, and named in its problems. */
export const BATCH_LABELS = {
  name: 'Name',
  purpose: 'Purpose',
  strainId: 'Kind of bird',
  sex: 'Sex',
  wantedBirds: 'Birds wanted in the freezer',
  arrivalDate: 'Arrival',
  leaveAgeDays: 'Age at processing',
  brooderId: 'Brooder',
  penId: 'Field pens',
  coopId: 'Coop',
  freezerId: 'Freezer',
  feedStoreId: 'Feed store',
  growthTableId: 'Growth table',
  broodingScheduleId: 'Brooding schedule',
  spaceStandardId: 'Brooder space',
  moveOutRuleId: 'Move-out rule',
  processing: 'Processing',
  weightFactor: 'Weight factor',
  feedFactor: 'Feed factor',
  wastePercent: 'Feed wasted',
  firstWeekLossPercent: 'First-week loss',
  laterLossPercent: 'Later loss',
  orderedBirds: 'Birds ordered, if fixed',
  bagKg: 'One bag of feed',
  hatchToArrivalDays: 'Days from hatch to arrival',
  targetLiveKg: 'Target live weight',
  dressingShare: 'Dressing',
  movesPerDay: 'Pen moves a day',
  medicatedWithdrawalDays: 'Withdrawal days on the feed label',
  moveOutDate: 'Move-out, if you fix it yourself',
  orderDate: 'Ordered on',
} satisfies Partial<Record<keyof Batch, string>>;

const PRICE_LABELS = {
  'prices.perBird': 'A chick',
  'prices.beddingPerBag': 'A bag of bedding',
  'prices.processingPerBird': 'Processing a bird',
};

/** The words of the order's form; the arrival finder's fields are among them. */
export const batchWords = (purpose: Purpose, reader: Reader): FormWords => {
  const labelOf = labelsFrom({
    ...BATCH_LABELS,
    ...PRICE_LABELS,
    ...(purpose === 'layers' ? { wantedBirds: 'Hens wanted' } : {}),
    from: 'From',
    to: 'To',
    weekday: 'The box comes on a',
  });
  return {
    labelOf: (field) => {
      const own = field.replace(/^batch\./, '');
      return labelOf(own) ?? (own.startsWith('prices.feedPerBag.') ? 'A bag of feed' : undefined);
    },
    reader,
  };
};
