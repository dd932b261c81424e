import { eggChecks } from './eggs.js';
import { growthChecks } from './growth.js';
import { coldChecks } from './cold.js';
import { leavingChecks } from './leaving.js';
import type { Topic } from './given.js';

/**
 * Every topic by its name: `seeds/checks/NAME.json` holds its rows, the file of that name beside
 * this one what they are computed by.
 */
export const TOPICS = {
  cold: coldChecks,
  eggs: eggChecks,
  growth: growthChecks,
  leaving: leavingChecks,
} satisfies Readonly<Record<string, Topic>>;

export type TopicName = keyof typeof TOPICS;
export const TOPIC_NAMES = Object.keys(TOPICS) as readonly TopicName[];
