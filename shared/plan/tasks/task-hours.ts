import type { Formula } from '../../explain/formula.js';
import type { Tried } from '../../explain/moved.js';
import { input, quantity, type NumberQuantity, type Quantity } from '../../explain/quantity.js';
import type { TaskTemplate, WorkUnit } from '../../tables/task-template.js';
import type { Tables } from '../../tables/tables.js';
import type { Task } from './task.js';

export const taskFormulas = {
  hours: {
    id: 'task-hours',
    title: 'Hours of work',
    words:
      'A base plus an amount for every 100 birds, ten head, acre or ton of hay; daily work is multiplied by its days. Most figures are estimates: put in your own.',
    symbols: 'h = (b + v·n)·days',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  sum: {
    id: 'task-hours-in-all',
    title: 'Hours of work in all',
    words: 'Hours of every task of the batch, summed. Most figures are estimates: put in your own.',
    symbols: 'H = Σ h',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

const UNITS: Record<
  WorkUnit,
  { readonly size: number; readonly forEvery: string; readonly units: string }
> = {
  'hundred-birds': { size: 100, forEvery: 'For every 100 birds', units: 'Hundreds of birds' },
  'hundred-eggs': { size: 100, forEvery: 'For every 100 eggs', units: 'Hundreds of eggs' },
  'ten-head': { size: 10, forEvery: 'For every ten head', units: 'Tens of head' },
  acre: { size: 1, forEvery: 'For every acre', units: 'Acres' },
  ton: { size: 1, forEvery: 'For every ton of hay', units: 'Tons of hay' },
};

/**
 * Hours of a task, or of one day of it when it is daily, and the units of work they are made of.
 *
 * @param count birds, head, acres or tons, 0 or more
 */
export function hoursOf(
  { hoursBase, hoursPerUnit, unit }: TaskTemplate,
  count: number,
): { hours: number; units: number } {
  const { size } = UNITS[unit];
  return { hours: hoursBase + (hoursPerUnit * count) / size, units: count / size };
}

type Templates = Pick<Tables, 'taskTemplates' | 'herdTaskTemplates'>;

/** The row that the hours of a task come from. */
export function templateOf(
  { taskTemplates, herdTaskTemplates }: Templates,
  { templateId }: Task,
): TaskTemplate {
  const isIts = ({ id }: TaskTemplate): boolean => id === templateId;
  const template = taskTemplates.find(isIts) ?? herdTaskTemplates.find(isIts);
  if (!template) throw new Error(`No task template "${templateId}" in the tables.`);
  return template;
}

/** The hours of a task, opened to their inputs. */
export function taskHours(task: Task, tables: Templates): NumberQuantity {
  const template = templateOf(tables, task);
  const { forEvery, units } = UNITS[template.unit];
  return quantity(
    `Hours: ${task.name}`,
    task.hours,
    'h',
    taskFormulas.hours,
    [
      input('Base', template.hoursBase, 'h', 'b'),
      input(forEvery, template.hoursPerUnit, 'h', 'v'),
      input(units, task.units, 'ratio', 'n'),
      input('Days', task.days, 'day'),
    ],
    { rows: [template] },
  );
}

/** By how much work easily takes longer than it is reckoned. */
const LONGER = 1.25;

/**
 * What moves the hours of a task most: its base or its amount for each, whichever is more of them,
 * a quarter more.
 *
 * @param hours as `taskHours` makes them
 */
export function hoursMovedMost(hours: Quantity): Tried {
  const { inputs } = hours;
  const of = (at: number): number => Number(inputs[at]!.value);
  const [base, forEach, days] = [of(0), of(1) * of(2), of(3)];
  const isBase = forEach < base;
  const value = isBase ? base * LONGER + forEach : base + forEach * LONGER;
  const each = inputs[1]!.label.toLowerCase();
  return {
    what: isBase
      ? 'If it takes a quarter longer, however many they are'
      : `If it takes a quarter longer ${each}`,
    to: { ...hours, value: value * days },
  };
}
