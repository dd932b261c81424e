import type { FeedOpening } from './feed-opening.js';
import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { BrooderLook } from './brooder-look.js';
import type { CalvingTold } from './calving-told.js';
import type { CattleLeft } from './cattle-left.js';
import type { FeedBought } from './feed-bought.js';
import {
  HEAD_CHANGES,
  type Arrived,
  type Died,
  type Gone,
  type HeadChange,
  type Processed,
} from './head-count.js';
import type { GroundCheck } from './ground-check.js';
import type { Progress } from './job.js';
import type { HeatOut, HeatWorks } from './heat-out.js';
import type { Mowing, PaddockMown } from './mowing.js';
import type { GrassReading } from './paddock.js';
import type { RowChanged } from './row-changed.js';
import type { EggCount, EggsCounted } from './egg-count.js';
import type {
  Bought,
  BrooderSeen,
  Calved,
  EggsGone,
  FeedOpened,
  Milked,
  Note,
  Rained,
  WaterDrunk,
} from './season-facts.js';
import type { Treated, Treatment } from './treated.js';
import { averageOf, type Weighed, type Weighing } from './weighing.js';

/** What happened, to what, when, and who said so. It is never overwritten: it is taken back. */
export interface Told<Kind extends string, Details> {
  readonly id: string;
  readonly kind: Kind;
  /** What it happened to: the key of a piece of work, or the id of a paddock or herd. */
  readonly about: string;
  readonly on: PlainDate;
  readonly details: Details;
  readonly saidBy?: string;
  /** When it was told, an instant in UTC. Facts of a farm are told one after another. */
  readonly toldAt: string;
  /** The teller's own name for it: told again under the same key it stays one fact. */
  readonly key: string;
  /** Id of the fact that it changed: what it was before. */
  readonly replaces?: string;
  /** When it was taken back; the fact it replaced, if any, holds again. */
  readonly takenBackAt?: string;
}

/** What became of a piece of work: done, put off, part done, and the hours it took. */
export type WorkProgress = Told<'work-progress', Omit<Progress, 'key'>>;
/** A height read in a paddock. */
export type HeightRead = Told<
  'grass-reading',
  {
    readonly heightCm: number;
    /** Said to be right, though it is far from what was expected. */
    readonly isSure?: boolean;
  }
>;
/** Whether the farm's ground was dry enough to work. */
export type GroundChecked = Told<'ground-check', { readonly isWorkable: boolean }>;
/** A herd went into a paddock. */
export type HerdMove = Told<
  'herd-move',
  {
    /** Left out when the herd is in none. */
    readonly paddockId?: string;
    /** They came off grass. */
    readonly isOff?: boolean;
    /** Typed as the place where the herd is: what was told before of later days no longer holds. */
    readonly isTyped?: boolean;
    /** It is not known since when. */
    readonly isSinceUnknown?: boolean;
    /** What is left in the paddock that they left. */
    readonly leftHeightCm?: number;
    /** They were seen where they had been: nothing moved. */
    readonly isStill?: boolean;
    readonly work?: string;
    /** Day of the tick that told it, where that told a later move as well. */
    readonly tickedOn?: PlainDate;
  }
>;

/** Cattle of a herd died, or went to somebody else. */
export type CattleWent = Told<'cattle-left', CattleLeft>;

/** A paddock was mown for hay, or topped. */
export type PaddockWasMown = Told<'paddock-mown', PaddockMown>;

/** Some birds of a batch were put on a scale. */
export type BirdsWeighed = Told<'weighed', Weighed>;

/** A chore was done on its day. */
export type ChoreDone = Told<'chore-done', { readonly doneBy?: string }>;

/** Eggs of a batch were counted, over some days up to that day. */
export type EggsWereCounted = Told<'eggs-counted', EggsCounted>;

/** A box was opened, or eggs hatched. */
export type BirdsArrived = Told<'arrived', Arrived>;
/** Birds were found dead, or put down. */
export type BirdsDied = Told<'died', Died>;
/** Birds were processed. */
export type BirdsProcessed = Told<'processed', Processed>;
/** Live birds were sold or given. */
export type BirdsGone = Told<'gone', Gone>;
/** Whatever changes how many birds there are. */
export type HeadsChanged = BirdsArrived | BirdsDied | BirdsProcessed | BirdsGone;

/** A row of the farm was changed by its form: told by the service itself. */
export type RowWasChanged = Told<'row-changed', RowChanged>;

/** An alarm was seen: it is not told again. */
export type AlarmSeen = Told<'alarm-seen', Readonly<Record<never, never>>>;

/** What else happens in a season; no plan goes by it yet, or only by some of it. */
export type SeasonFact =
  | Told<'feed-opened', FeedOpened>
  | Told<'bought', Bought>
  | Told<'water-drunk', WaterDrunk>
  | Told<'brooder-seen', BrooderSeen>
  | Told<'heat-works', HeatWorks>
  | Told<'eggs-gone', EggsGone>
  | Told<'rained', Rained>
  | Told<'calved', Calved>
  | Told<'milked', Milked>
  | Told<'treated', Treated>
  | Told<'note', Note>;

export type ToldFact =
  | AlarmSeen
  | RowWasChanged
  | SeasonFact
  | HeadsChanged
  | BirdsWeighed
  | EggsWereCounted
  | WorkProgress
  | ChoreDone
  | HeightRead
  | GroundChecked
  | HerdMove
  | CattleWent
  | PaddockWasMown;
export type ToldKind = ToldFact['kind'];
export type FactOf<Kind extends ToldKind> = Extract<ToldFact, { kind: Kind }>;

/** What a ground check is about: the farm's ground has no id. */
export const FARM_GROUND = 'ground';
/** What is told of the whole place. */
export const WHOLE_FARM = 'farm';

/** Facts that hold: neither taken back nor replaced by one that holds. In the order they were told. */
export function holding<Fact extends Told<string, unknown>>(facts: readonly Fact[]): Fact[] {
  const told = facts.filter(({ takenBackAt }) => takenBackAt === undefined);
  const replaced = new Set(told.map(({ replaces }) => replaces));
  return told
    .filter(({ id }) => !replaced.has(id))
    .sort((a, b) => (a.toldAt < b.toldAt ? -1 : a.toldAt > b.toldAt ? 1 : 0));
}

/** Readings of grass that hold, the oldest first. */
export const readingsOf = (facts: readonly HeightRead[]): GrassReading[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({
      id,
      paddockId: about,
      date: on,
      ...details,
    }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.id < b.id ? -1 : 1));

/** Paddocks that were mown, the oldest first. */
export const mowingsOf = (facts: readonly PaddockWasMown[]): Mowing[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({ id, paddockId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.id < b.id ? -1 : 1));

/** What became of each piece of work, by its key. */
export const progressOf = (facts: readonly WorkProgress[]): Progress[] => {
  const last = new Map(holding(facts).map(({ about, details }) => [about, details]));
  return [...last].map(([key, details]) => ({ ...details, key }));
};

/** What was found when the ground was looked at, one look a day. */
export const groundChecksOf = (facts: readonly GroundChecked[]): GroundCheck[] => {
  const last = new Map(holding(facts).map(({ on, details }) => [on, details.isWorkable]));
  return [...last].map(([date, isWorkable]) => ({ date, isWorkable }));
};

/** Weighings of birds that hold, the oldest first. */
export const weighingsOf = (facts: readonly BirdsWeighed[]): Weighing[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({
      id,
      batchId: about,
      date: on,
      birds: details.birds,
      averageKg: averageOf(details),
      ...(details.eachKg === undefined ? {} : { eachKg: details.eachKg }),
    }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Counts of eggs that hold, the oldest first. */
export const eggCountsOf = (facts: readonly EggsWereCounted[]): EggCount[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({ id, batchId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Bags opened for batches that hold, the oldest first. */
export const feedOpeningsOf = (facts: readonly FactOf<'feed-opened'>[]): FeedOpening[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({ id, batchId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Days for which feed that was bought may still be there. */
export const FEED_KEPT_DAYS = 90;

/** What a document says was bought, as it would have been told. */
export const factsOfBought = (bought: readonly FeedBought[]): FactOf<'bought'>[] =>
  bought.map(({ id, date: on, ...details }, k) => {
    const key = id ?? `bought-${k + 1}`;
    const toldAt = `${on}T12:00:00.000Z`;
    return {
      ...{ id: key, key, kind: 'bought', about: WHOLE_FARM, on, toldAt },
      details: { what: 'feed', ...details },
    };
  });

/** Feed bought these months, the oldest first. */
export const feedBoughtOf = (facts: readonly FactOf<'bought'>[], today: PlainDate): FeedBought[] =>
  holding(facts)
    .filter(({ on, details }) => details.what === 'feed' && addDays(today, -FEED_KEPT_DAYS) <= on)
    .map(({ id, on, details: { name, amount, eachKg, work } }) => ({
      ...{ id, date: on, amount },
      ...(work === undefined ? {} : { work }),
      ...(name === undefined ? {} : { name }),
      ...(eachKg === undefined ? {} : { eachKg }),
    }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** What else was bought for animals in a year: hay and minerals. */
export const herdFeedBoughtOf = (
  facts: readonly FactOf<'bought'>[],
  today: PlainDate,
): FactOf<'bought'>[] =>
  holding(facts).filter(
    ({ on, details: { what } }) =>
      (what === 'hay' || what === 'minerals') && addDays(today, -HERD_FEED_KEPT_DAYS) <= on,
  );

const HERD_FEED_KEPT_DAYS = 365;

export const changesHeads = (fact: ToldFact): fact is HeadsChanged =>
  HEAD_CHANGES.some((kind) => kind === fact.kind);

/** What changed how many birds of each batch there are, the oldest first. */
export const headChangesOf = (facts: readonly HeadsChanged[]): HeadChange[] =>
  holding(facts)
    .map((fact) => ({
      id: fact.id,
      batchId: fact.about,
      date: fact.on,
      change: fact.kind,
      birds:
        fact.kind === 'arrived'
          ? fact.details.birds - (fact.details.dead ?? 0)
          : fact.details.birds,
      ...('isLast' in fact.details && fact.details.isLast ? { isLast: true } : {}),
    }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Days for which a thermometer that was read says anything of a brooder. */
const BROODER_LOOK_DAYS = 3;

/** Thermometers read in brooders these days, the oldest first. */
export const brooderLooksOf = (
  facts: readonly FactOf<'brooder-seen'>[],
  today: PlainDate,
): BrooderLook[] =>
  holding(facts)
    .filter(({ on }) => addDays(today, -BROODER_LOOK_DAYS) <= on)
    .map(({ id, about, on, details }) => ({ id, batchId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** How much of the heat of each batch works, as told last; the oldest first. */
export const heatOutsOf = (facts: readonly FactOf<'heat-works'>[]): HeatOut[] =>
  holding(facts)
    .map(({ id, about, on, details }) => ({ id, batchId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Days for which a medicine that was given is kept in mind: no label asks for more. */
const TREATED_DAYS = 400;

/** Medicines that were given, the oldest first. */
export const treatmentsOf = (facts: readonly FactOf<'treated'>[], since?: PlainDate): Treatment[] =>
  holding(facts)
    .filter(({ on }) => since === undefined || since <= on)
    .map(({ id, about, on, details }) => ({ id, about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** Calves that are with their cows, or were born this year, are no older. */
const CALVED_DAYS = 400;

/** Births of herds within the year, the oldest first. */
export const calvingsToldOf = (
  facts: readonly FactOf<'calved'>[],
  today: PlainDate,
): CalvingTold[] =>
  holding(facts)
    .filter(({ on }) => addDays(today, -CALVED_DAYS) <= on)
    .map(({ id, about, on, details }) => ({ id, herdId: about, date: on, ...details }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

/** The first day of which a medicine can still be waited for. */
export const treatedSince = (today: PlainDate): PlainDate => addDays(today, -TREATED_DAYS);
