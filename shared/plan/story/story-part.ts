import type { EventKind } from '../../tables/task-template.js';
import type { BatchPlan } from '../batch-plan.js';
import type { Task } from '../tasks/task.js';

/** The questions that a batch's story answers, in the order of its life. */
export const STORY_PARTS = ['before', 'brooder', 'feed', 'out', 'end', 'cost'] as const;
export type StoryPart = (typeof STORY_PARTS)[number];

/** The part of the story that a piece of work belongs to. */
export function storyPartOf(
  task: Task,
  plan: Pick<BatchPlan, 'arrivalDate' | 'outdoors'>,
): StoryPart {
  const part = PARTS[task.event] ?? 'out';
  if (part !== 'end' && FEEDS.test(task.templateId)) return 'feed';
  if (part !== 'brooder') return part;
  if (task.end < plan.arrivalDate) return 'before';
  const out = plan.outdoors.moveOut?.value;
  return out !== undefined && String(out) <= task.start ? 'out' : 'brooder';
}

const PARTS: Partial<Record<EventKind, StoryPart>> = {
  'eggs-set': 'before',
  candle: 'before',
  lockdown: 'before',
  'heaters-short': 'before',
  arrival: 'brooder',
  'mild-days': 'brooder',
  delivery: 'feed',
  'last-medicated': 'feed',
  'harden-off': 'out',
  'move-out': 'out',
  processing: 'end',
  'hands-short': 'end',
  'first-egg': 'end',
};

/** Work that buys feed or changes it. */
const FEEDS = /-feed$/;
