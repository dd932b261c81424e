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

type Group<K extends string> = Readonly<Record<K, Judgement>>;

/** What the plans go by where no publication decides. */
export interface Judgements {
  /** Points off a hundred that a week of arrival loses, and what they hang on. */
  readonly arrival: Group<
    | 'neverWarm'
    | 'perDayHeld'
    | 'heldMost'
    | 'unsureNights'
    | 'placeTaken'
    | 'brooderTooSmall'
    | 'heaterShort'
    | 'heaterTooWeak'
    | 'pensShort'
    | 'heatBegins'
    | 'heatSerious'
    | 'everybodyAway'
    | 'somebodyAway'
    | 'processedAfterFrost'
    | 'processedInCold'
    | 'notDelivered'
    | 'frozenBox'
    | 'past'
    | 'shortNotice'
    | 'usualLeadDays'
    | 'coldBoxC'
    | 'coldWorkC'
    | 'lastHotDays'
    | 'mindedFirstDays'
  >;
  /** Brooders, moving out, processing. */
  readonly birds: Group<'daysBefore' | 'daysAfter' | 'unsureBelow' | 'processingStartH'>;
  /** What an order of moves is weighed by: hay, and what keeps the sward right. */
  readonly grazing: Group<
    | 'early'
    | 'shortRest'
    | 'rank'
    | 'backOnHay'
    | 'moveKg'
    | 'earliestShare'
    | 'leastRestShare'
    | 'leastDayShare'
    | 'hayWorth'
    | 'shutBeforeDays'
    | 'dryingDays'
    | 'shortShare'
    | 'littleShare'
    | 'leastHeadShare'
    | 'mostAdded'
    | 'longerRestDays'
  >;
  /** Grass and cattle. */
  readonly grass: Group<
    | 'growsKgPerHa'
    | 'unknownHeightCm'
    | 'ease'
    | 'winterReadingDays'
    | 'rankOverReady'
    | 'autumnShare'
    | 'bloatCautionShare'
    | 'dryShare'
    | 'hotHumidityShare'
    | 'dryCowDays'
    | 'midLactationWeeks'
  >;
  /** The household's work. */
  readonly work: Group<
    | 'graceDays'
    | 'closeDays'
    | 'longPastDays'
    | 'leastHours'
    | 'shownDoneDays'
    | 'mostLoggedFactor'
    | 'usualHoursWeight'
    | 'looksCountDays'
    | 'groundLeastShare'
    | 'groundMostShare'
    | 'fewestYears'
  >;
}

/** The bare values of a group, for code that reads them by the million. */
export const valuesOf = <K extends string>(group: Group<K>): Readonly<Record<K, number>> =>
  Object.fromEntries(
    Object.entries<Judgement>(group).map(([key, { value }]) => [key, value]),
  ) as Record<K, number>;
