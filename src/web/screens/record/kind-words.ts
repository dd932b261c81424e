import type { ToldKind } from '../../../../shared/farm/told-fact.js';

/** What is asked for when only one kind of fact is to be seen. */
export const KIND_WORDS: Readonly<Partial<Record<ToldKind, string>>> = {
  arrived: 'Birds that came',
  died: 'Birds that died',
  processed: 'Processing',
  gone: 'Birds sold or given',
  weighed: 'Weighings',
  'feed-opened': 'Feed opened',
  bought: 'What was bought',
  'water-drunk': 'Water they drank',
  'brooder-seen': 'Brooder thermometer',
  'heat-works': 'Heat out or mended',
  'eggs-counted': 'Eggs counted',
  'eggs-gone': 'Eggs sold or given',
  'grass-reading': 'Grass heights',
  'herd-move': 'Moves of herds',
  'paddock-mown': 'Mowing',
  calved: 'Calves',
  'cattle-left': 'Cattle that died or went',
  milked: 'Milk',
  treated: 'Medicines',
  rained: 'Rain',
  'ground-check': 'Looks at the ground',
  'work-progress': 'Work',
  note: 'Notes',
  'row-changed': 'Changes of people, animals, paddocks, gear, prices and jobs',
};

/** Kinds that can be changed here: the others are changed where they are told. */
export const CHANGED_HERE: ReadonlySet<ToldKind> = new Set<ToldKind>([
  ...(['arrived', 'died', 'processed', 'gone', 'weighed', 'feed-opened', 'bought'] as const),
  ...(['water-drunk', 'brooder-seen', 'eggs-counted', 'eggs-gone', 'calved', 'milked'] as const),
  ...(['cattle-left', 'treated', 'rained', 'note'] as const),
]);
