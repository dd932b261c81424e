import type { PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Judgements } from '../../tables/judgements.js';
import type { IssueLevel } from '../../problems/plan-issue.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { WorkPlan } from '../work/planned-work.js';
import type { AnimalLine } from './animal-lines.js';
import type { BatchLine } from './batch-line.js';
import type { LeavingChoice } from '../record/weight-follows.js';
import type { LaterMove } from '../work/later-event.js';
import type { MoveMeant, StillIn } from './move-meant.js';
import type { CalvingAsked } from './calving-asked.js';

/** Where something is looked into and put right. */
export type Place =
  | { readonly kind: 'batch'; readonly id: string }
  | { readonly kind: 'pasture' | 'work' | 'away' | 'record' | 'feed' };

/** What wants a decision within two weeks. */
export interface Attention {
  readonly key: string;
  readonly level: IssueLevel;
  /** In a few words, and all of it. */
  readonly words: string;
  readonly text?: string;
  /** Batch, herd or work it is about. */
  readonly of?: string;
  /** The day by which it has to be settled; left out where it is now. */
  readonly by?: PlainDate;
  readonly place: Place;
  /** It is wrong now: it stands until it was seen, and does not come again. */
  readonly isAlarm?: true;
  /** To have seen it only puts it off: so many days later it is asked again. */
  readonly againDays?: number;
  /** Moves that are told with one touch, if they were as planned. */
  readonly moves?: readonly MoveMeant[];
  /** Birds that are told with one touch to have come as planned, or not at all. */
  readonly came?: {
    readonly batchId: string;
    readonly on: PlainDate;
    readonly birds: number;
    /** So long ago that they may never have come. */
    readonly isLongAgo?: boolean;
  };
  /** Key of an order that is told with one touch to have been made. */
  readonly ordered?: string;
  /** Where they were told to be, if they are still there. */
  readonly stillIn?: StillIn;
  /** A later move out or turn-out that is set with one touch. */
  readonly later?: LaterMove;
  /** A herd that may be out already: its move is told from here. */
  readonly out?: { readonly herdId: string; readonly paddockId?: string };
  /** Birds that are gone by a tick, and when: how many they were is told from here. */
  readonly uncounted?: { readonly line: BatchLine; readonly on: PlainDate };
  /** Another day of processing that is set with one touch; to have seen it is to keep the one planned. */
  readonly leaving?: LeavingChoice;
  /** Cows whose calves were due and not told: what came of them is told with one touch. */
  readonly calving?: CalvingAsked;
}

/** What is wrong now, and gets worse by waiting: each is told until it is seen, and not again. */
export type Alarm = Attention & { readonly isAlarm: true };

/** All that is looked through for what wants attention. */
export interface Looked {
  readonly picture: FarmPicture;
  readonly plan: WorkPlan;
  readonly batches: readonly PlannedBatch[];
  readonly pasture: PasturePlan | undefined;
  readonly animals: readonly AnimalLine[];
  readonly judged: Judgements['alarms'];
}
