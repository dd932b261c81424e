import type { Tables } from '../tables/tables.js';
import type { CheckRow } from './check-row.js';
import { compare, type Check } from './compare.js';
import { givenOf, type Topic } from './given.js';
import { TOPIC_NAMES, TOPICS, type TopicName } from './topics.js';

/** The rows of every topic. */
export type CheckTables = Readonly<Record<TopicName, readonly CheckRow[]>>;

/** What the program computes for one row, as a plan does. */
function oursOf(topic: TopicName, row: CheckRow, tables: Tables): number {
  const { by }: Topic = TOPICS[topic];
  return by[row.by]!(givenOf(row, tables));
}

/** Holds one row against what the program computes. */
export const runCheck = (topic: TopicName, row: CheckRow, tables: Tables): Check =>
  compare(TOPICS[topic].title, row, oursOf(topic, row, tables));

/** Holds every row against what the program computes, topic by topic. */
export const runChecks = (checks: CheckTables, tables: Tables): Check[] =>
  TOPIC_NAMES.flatMap((topic) => checks[topic].map((row) => runCheck(topic, row, tables)));
