import { whole, within } from './bounds.js';
import { choice, list, longText, number, optional, row, text, type RowOf } from './field.js';
import { MOST_PHOTOS } from './photo.js';
import { date, id, price, workKey } from './words.js';

/** Bags of feed that were opened for a batch. */
export const feedOpenedFields = row('FeedOpened', {
  bags: number('Bags opened', within(0.1, 500, 'count', 'Count the bags that were opened.')),
  /** Left out, the bag of the plan. */
  bagKg: optional(number('One bag', within(1, 1500, 'kg', 'Read the weight of one bag.'))),
});
export type FeedOpened = RowOf<typeof feedOpenedFields>;

/** Something that was bought for the place. */
export const boughtFields = row('Bought', {
  what: choice('What', ['feed', 'bedding', 'hay', 'minerals', 'gas', 'other']),
  name: optional(text('Name')),
  amount: number(
    'How many',
    within(0.01, 100_000, 'count', 'Give how many bags, bales or bottles.'),
  ),
  /** Of one bag, bale or bottle. */
  eachKg: optional(number('One of them', within(0.1, 1500, 'kg', 'Read the weight of one.'))),
  /** For all of them together. */
  money: optional(price('What it cost, all together')),
  /** The seller's name. */
  from: optional(text('Bought from')),
  /** Key of the trip whose tick told it: its undo takes this back, and nothing told by itself. */
  work: optional(workKey('Work that was ticked')),
});
export type Bought = RowOf<typeof boughtFields>;

/** Water that a batch drank on a day. */
export const waterDrunkFields = row('WaterDrunk', {
  liters: number('Water drunk', within(0.05, 20_000, 'L', 'Give what was filled in on that day.')),
});
export type WaterDrunk = RowOf<typeof waterDrunkFields>;

/** A thermometer that was read in a brooder. */
export const brooderSeenFields = row('BrooderSeen', {
  underHeatC: number(
    'Under the heat, at chick height',
    within(-10, 60, 'degC', 'Give what the thermometer shows.'),
  ),
  besideC: optional(
    number('At the cool end', within(-30, 55, 'degC', 'Give what the thermometer shows.')),
  ),
});
export type BrooderSeen = RowOf<typeof brooderSeenFields>;

/** Eggs that went to somebody else. */
export const eggsGoneFields = row('EggsGone', {
  eggs: number('Eggs that went', whole(1, 20_000, 'eggs', 'Count the eggs that went.')),
  how: choice('How', ['sold', 'given']),
  money: optional(price('What they brought, all together')),
});
export type EggsGone = RowOf<typeof eggsGoneFields>;

/** Rain that the gauge of the farm held. */
export const rainedFields = row('Rained', {
  mm: number(
    'Rain in the gauge',
    within(0, 600, 'mm', 'Give what the gauge held since it was last emptied.'),
  ),
});
export type Rained = RowOf<typeof rainedFields>;

/** A cow calved, or was found to have no calf in her. */
export const calvedFields = row('Calved', {
  calves: number('Calves born alive', whole(0, 20, 'count', 'Count the calves.')),
  dead: optional(number('Calves born dead', whole(0, 20, 'count', 'Count the calves.'))),
  /** Cows that calve none after all: nobody waits for them, or asks. */
  notInCalf: optional(
    number('Cows not in calf', whole(1, 500, 'count', 'Count the cows that have no calf in them.')),
  ),
  cowId: optional(id('Which cow')),
  /** Of a group that was asked after: its class and its due date, as they were then. */
  classId: optional(id('Of which class')),
  dueOn: optional(date('Calving due')),
});
export type Calved = RowOf<typeof calvedFields>;

/** Milk of a day. */
export const milkedFields = row('Milked', {
  liters: number('Milk of the day', within(0.05, 500, 'L', 'Give what was milked on that day.')),
  /** Of a cow that has had medicine: nobody drinks or sells it. */
  keptOutL: optional(
    number('Thrown away: medicine', within(0, 500, 'L', 'Give what was thrown away of it.')),
  ),
});
export type Milked = RowOf<typeof milkedFields>;

/** What somebody wants to remember: in words, in photos, or both. */
export const noteFields = row('Note', {
  text: optional(longText('Note', 2000)),
  /** Ids of photos that were sent before. */
  photos: optional(list('Photos', id('Photo'), MOST_PHOTOS, 'photos', 1)),
});
export type Note = RowOf<typeof noteFields>;
