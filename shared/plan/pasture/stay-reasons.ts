import type {
  Entry,
  SeasonBooks,
  StayEnd,
  StayRecord,
  StayStart,
} from '../../pasture/season-books.js';

export const START_WORDS: Record<StayStart, string> = {
  'out-already': 'the herd is on grass when the plan begins',
  'turn-out': 'turn-out: the first day the rules allow',
  next: 'the stay before has ended',
  'after-hay': 'grass is ready again after days on hay',
};

export const ENTRY_WORDS: Record<Entry, string> = {
  ready: 'it is rested and at its best height',
  'first-pass': 'the first quick pass of spring, which goes in lower',
  'leaf-stage':
    'ready by its leaves: it has all of them, within the heights printed for going in, and the old ones die if it waits for its best height',
  'at-rest': 'nothing grows in these weeks; what stands is eaten before it withers',
  dormant: 'the last round: it grows hardly any taller this season, and still stands tall enough',
  'standing-there': 'the herd stands there when the plan begins',
};

export const END_WORDS: Record<StayEnd, string> = {
  'eaten-down': 'what stands above the residual does not feed another day',
  'long-enough': 'it has been in for long enough, and the next paddock would grow old',
  shut: 'the paddock is closed from the next day on',
  'herd-gone': 'no animal of the herd grazes on the next day',
  'plan-ends': 'the plan ends',
  snow: 'snow lies from the next day on',
};

/** The herd's stay before this one. */
export const stayBefore = (books: SeasonBooks, stay: StayRecord): StayRecord | undefined =>
  books.stays.findLast((each) => each.herd === stay.herd && each.from < stay.from);
