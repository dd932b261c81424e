import type { Unit } from '../units/unit.js';
import type { Sourced } from '../explain/formula.js';

/** A figure that is nobody's finding: a household could well see it otherwise. */
export interface Judgement extends Sourced {
  /** A few words, as it stands beside other inputs. */
  readonly name: string;
  /** What it decides. */
  readonly words: string;
  readonly value: number;
  readonly unit: Unit;
}

/** What the plans go by where no publication decides. */
export const JUDGED = {
  /** Points off a hundred that a week of arrival loses, and what they hang on. */
  arrival: [
    'neverWarm',
    'perDayHeld',
    'heldMost',
    'unsureNights',
    'placeTaken',
    'brooderTooSmall',
    'heaterShort',
    'heaterTooWeak',
    'brooderClose',
    'brooderHot',
    'brooderDanger',
    'pensShort',
    'heatBegins',
    'heatSerious',
    'everybodyAway',
    'somebodyAway',
    'processedAfterFrost',
    'processedInCold',
    'notDelivered',
    'frozenBox',
    'hotBox',
    'past',
    'slotMissed',
    'shortNotice',
    'usualLeadDays',
    'coldBoxC',
    'hotBoxC',
    'coldWorkC',
    'lastHotDays',
    'mindedFirstDays',
  ],
  /** Brooders, moving out, processing. */
  birds: [
    'daysBefore',
    'daysAfter',
    'unsureBelow',
    'processingStartH',
    'moveOutNights',
    'penHeatNights',
    'hardenDays',
    'brooderSpareDays',
    'longInBrooderDays',
    'olderFlockDays',
    'handHours',
    'handsUnknown',
    'apartDays',
    'settleDays',
    'leastADay',
    'usualLossBirds',
    'usualGrowthBatches',
    'layDaysToLearn',
    'splitDays',
    'splitDaysMost',
    'leastSplitWeight',
    'stopAsGood',
    'slotWeightShare',
    'fewFeedDays',
    'usualSpreadBirds',
    'evenSpread',
    'unevenSpread',
    'sexesApart',
    'fewestWeights',
    'flocksApart',
    'wanderDays',
    'changedShare',
    'weighedTimes',
    'earlyEggShare',
    'lateEggShare',
    'feedApart',
    'feedFarOff',
    'feedDrift',
    'unusualLossChance',
    'fewestLost',
    'roundsApartH',
  ],
  /** What moves of cattle are decided by, beside heights and rests. */
  grazing: [
    'lowEntriesShare',
    'leastDayShare',
    'mostStrips',
    'enterDayShare',
    'roundShare',
    'walkEveryDays',
    'lookAheadDays',
    'missedShare',
    'oldGrassShare',
    'rankHayShare',
    'littleGainShare',
    'leastCutKgPerHa',
    'hayAtOnceM2',
    'hayGrowsDays',
    'backFromHayDays',
    'firstRoundsDays',
    'dryingDays',
    'toppedAWalk',
    'leastDryingMm',
    'plainHayRipeness',
    'shortShare',
    'littleShare',
    'leastHeadShare',
    'mostAdded',
    'longerRestDays',
  ],
  /** Grass and cattle. */
  grass: [
    'growsKgPerHa',
    'leftBeforeWinterDays',
    'winterReadingDays',
    'rankOverReady',
    'autumnShare',
    'bloatCautionShare',
    'dryShare',
    'hotHumidityShare',
    'hotDayDeviations',
    'highsSpreadK',
    'dryCowDays',
    'midLactationWeeks',
    'weaningDays',
    'grainSparesShare',
    'rankDays',
    'haySoonDays',
    'carriesShare',
    'upkeepOnlyShare',
    'carriesDays',
    'aheadDays',
    'dryRainDays',
  ],
  /** Feed of the household's own mixing. */
  rations: [
    'leastEnergyShare',
    'headroomShare',
    'calciumOverShare',
    'phosphorusOverShare',
    'sodiumOverShare',
    'youngFiberShare',
    'grownFiberShare',
    'premixShare',
    'leastShare',
    'leastAdditiveShare',
    'leaveOutCostShare',
  ],
  /** The household's work. */
  work: [
    'graceDays',
    'closeDays',
    'hurriedShare',
    'stayH',
    'longPastDays',
    'leastHours',
    'shownDoneDays',
    'mostLoggedFactor',
    'usualHoursWeight',
    'looksCountDays',
    'groundLeastShare',
    'groundMostShare',
    'fewestYears',
    'restDoneDays',
    'restLostDays',
    'sureShare',
    'likelyShare',
    'fewDays',
    'helperHours',
    'ownFrostC',
    'hayBelowC',
  ],
  /** Buying feed. */
  buying: ['tripH', 'tripHourBags', 'mineralsGPerDay', 'hayAheadDays'],
  /** When something is said to be wrong, and what is asked when it is. */
  alarms: [
    'recentDays',
    'askedAgainDays',
    'leavingAskedDays',
    'brooderOffK',
    'grazedLowCm',
    'tenderDays',
    'feedAheadDays',
    'bagLeftShare',
    'limitNearShare',
    'spellAheadDays',
    'spellDays',
    'boardShare',
    'leaveSoonestDays',
    'shorterRestShare',
  ],
} as const;

type Group<K extends string> = Readonly<Record<K, Judgement>>;

export type Judgements = {
  readonly [G in keyof typeof JUDGED]: Group<(typeof JUDGED)[G][number]>;
};

/** The bare values of a group, for code that reads them by the million. */
export const valuesOf = <K extends string>(group: Group<K>): Readonly<Record<K, number>> =>
  Object.fromEntries(
    Object.entries<Judgement>(group).map(([key, { value }]) => [key, value]),
  ) as Record<K, number>;
