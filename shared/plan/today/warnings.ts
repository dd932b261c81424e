import type { PlainDate } from '../../calendar/plain-date.js';
import type { Quantity } from '../../explain/quantity.js';
import type { PlanIssue } from '../../problems/plan-issue.js';
import type { BatchPlan } from '../batch-plan.js';
import { stageOf, type BatchStage } from './batch-stage.js';

/** Warnings that are settled one way or the other once the birds are there. */
const BEFORE_ARRIVAL = ['too-few-birds', 'no-post', 'eggs-kept-long', 'hatch-away'];
const OF_BROODER =
  /^(brooder-|heat-(?!stress)|lamp-|circuit-|plate-|schedule-of-air|move-|no-warm-nights|place-taken)/;
/** Work that is late stands among the work of the day. */
const SAID_BY_WORK = 'tasks-late';

/** Whether something of a plan still wants a decision at that stage of its birds. */
export const isOpen = (issue: PlanIssue, stage: BatchStage): boolean =>
  issue.level !== 'note' && isAhead(issue, stage);

/** Whether something of a plan is of what is still ahead of birds at that stage. */
const isAhead = ({ code }: PlanIssue, stage: BatchStage): boolean =>
  code !== SAID_BY_WORK &&
  (stage === 'coming' || stage === 'eggs' || !BEFORE_ARRIVAL.includes(code)) &&
  (stage !== 'out' || !OF_BROODER.test(code));

/** What a saved batch’s plan has to say of the days still ahead of it; of birds that left, nothing. */
export const issuesAhead = (plan: BatchPlan): readonly PlanIssue[] => {
  const left = dateOf(plan.leaving?.on);
  if (left !== undefined && left < plan.today) return [];
  const stage = stageOf(plan, plan.today);
  return plan.issues.filter((issue) => isAhead(issue, stage));
};

/**
 * The day by which a warning of a plan is to be settled; undefined where it is now, or where none
 * is known.
 */
export function settledBy({ code }: PlanIssue, plan: BatchPlan): PlainDate | undefined {
  if (code === 'brooder-floor-short' || code === 'brooder-edge-short') {
    const dates = plan.space.needs.flatMap(({ runsOut }) => dateOf(runsOut) ?? []);
    return dates.sort()[0];
  }
  if (/^(move-|no-warm-nights|cold-later)/.test(code)) return dateOf(plan.outdoors.moveOut);
  const over = plan.leaving?.freezerSteps?.find(({ isOver }) => isOver);
  if (code === 'freezer-full' && over) return over.on;
  if (/^(freezer-full|processing-|cockerels-leave)/.test(code))
    return dateOf(plan.leaving?.on ?? plan.birds.cockerelsLeave?.on);
  if (/^(no-post|heat-|lamp-|circuit-|plate-|too-few-birds)/.test(code)) return plan.arrivalDate;
  return undefined;
}

const dateOf = (quantity: Quantity | undefined): PlainDate | undefined =>
  quantity === undefined ? undefined : String(quantity.value);

/** Warnings in a few words; the whole sentence stands behind them. */
const IN_FEW_WORDS: Readonly<Record<string, string>> = {
  'brooder-floor-short': 'brooder too small',
  'brooder-edge-short': 'feeder too short',
  'brooder-hot': 'too hot in the brooder on a hot day',
  'heat-left-on': 'too hot at noon if all is left on',
  'heat-too-weak': 'not enough heat for a cold night',
  'heat-ends-cold': 'cold in the brooder once the schedule ends',
  'heat-check': 'check the heat on a cold night',
  'plate-room-cold': 'room too cold for the plates',
  'lamp-too-strong': 'lamp too strong',
  'lamp-no-headroom': 'no room to hang the lamps safely',
  'lamp-under-lid': 'a lid that can burn over the lamps',
  'circuit-overloaded': 'too much on the circuit',
  'circuit-not-named': 'more heat than one common circuit carries',
  'circuit-if-added': 'no room on the circuit for more heat',
  'move-too-late': 'nights warm enough only days before they leave',
  'no-warm-nights': 'no nights warm enough to go out',
  'move-out-cold': 'cold nights after the move',
  'move-out-unsure': 'nights after the move may be cold',
  'move-out-with-heat': 'heat in the pen before they go out',
  'move-into-winter': 'they would go out into winter',
  'cold-later': 'cold nights later outdoors',
  'heat-stress': 'hot days ahead',
  'open-shelter': 'shelter too open',
  'pens-short': 'pens too small',
  'coop-short': 'coop too small',
  'stocking-density': 'too many birds for the ground',
  'place-taken': 'another batch is in the way',
  'freezer-full': 'freezer too small',
  'store-too-small': 'feed store too small',
  'processing-too-much': 'more birds than hands to process them',
  'processing-hours': 'too little time to process them',
  'processing-long': 'one long day to process them',
  'processing-all-longer': 'longer days than your hours to process them',
  'processing-split': 'more than one day to process them',
  'processing-weekday': 'too few hours on the day they are ready',
  'cockerels-leave': 'cockerels to process',
  'withdrawal-short': 'medicated feed too close to eating',
  'medicated-before-eggs': 'medicated feed too close to the eggs',
  'too-few-birds': 'too few ordered',
  'birds-apart': 'new birds too soon among the others',
  'keep-apart': 'new pullets to keep apart',
  'quarantine-place': 'no place for new cattle to stand apart',
  'quarantine-grazed': 'a herd grazes where new cattle stand apart',
  'quarantine-shared': 'new cattle come to others kept apart',
  'quarantine-calving': 'a calf is due in quarantine',
  'no-post': 'no post on that day',
  'hatch-away': 'nobody home for the hatch',
  'weighing-far-off': 'weighing far from the plan',
  'height-taken': 'how tall is the grass?',
  'on-hay-unused': 'a day on hay that is not of this winter',
  'grass-short': 'grass does not reach',
  'hay-untold': 'was the hay made?',
  'hay-count-again': 'how much hay is left?',
  'grass-over': 'grass is over',
  'more-than-grows': 'more cattle than the grass feeds',
  'target-not-reached': 'weight wanted is never reached',
};

export const fewWords = ({ code, text }: PlanIssue): string =>
  IN_FEW_WORDS[code] ?? /^.*?[.!?](?=\s+[A-Z0-9]|$)/.exec(text)?.[0] ?? text;
