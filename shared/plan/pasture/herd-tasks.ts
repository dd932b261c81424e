import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { WorkConditions } from '../../farm/job.js';
import type { Formula } from '../../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { issue } from '../../problems/plan-issue.js';
import { backSchedule, type HungTask } from '../../schedule/back-schedule.js';
import type { HerdTaskTemplate } from '../../tables/pasture-tables.js';
import type { TaskHabits } from '../task-habits.js';
import type { PastureContext } from './pasture-context.js';
import type { TurningPart } from './turning-points.js';

export const herdTaskFormulas = {
  hours: {
    id: 'herd-task-hours',
    title: 'Hours of work',
    words: 'A base plus an amount for every ten head or every acre. Estimates: put in your own.',
    symbols: 'h = (b + v·n)·days',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface HerdTask extends TaskHabits {
  readonly id: string;
  readonly templateId: string;
  readonly name: string;
  readonly herdId: string;
  readonly anchor: HerdTaskTemplate['anchor'];
  readonly start: PlainDate;
  readonly end: PlainDate;
  readonly latestStart: PlainDate;
  readonly slackDays: number;
  readonly alreadyLate: boolean;
  readonly hours: NumberQuantity;
  readonly needs?: string;
  readonly conditions?: WorkConditions;
  /** Ids of tasks of the same event that come first. */
  readonly waitsForIds: readonly string[];
  /** Daily work, which takes its hours every day from start to end. */
  readonly isDaily: boolean;
  readonly waitsFor: readonly string[];
  readonly ifLate: string;
}

const M2_PER_ACRE = 4046.8564224;

/** Work hung on turn-out, arrivals and calvings of every herd, by date. */
export function planHerdTasks(context: PastureContext, turning: TurningPart): HerdTask[] {
  const tasks = context.herds.flatMap((herd, h): HerdTask[] => {
    const dates = turning.herds[h]!;
    const anchors: readonly (readonly [HerdTaskTemplate['anchor'], PlainDate, string])[] = [
      ...(dates.turnOut ? [['turn-out', String(dates.turnOut.value), herd.id] as const] : []),
      ...dates.arrivals.map((a, k) => ['cattle-arrival', a.on, `${herd.id}.a${k}`] as const),
      ...dates.calvings.map(
        (c, k) => ['calving', String(c.due.value), `${herd.id}.c${k}`] as const,
      ),
    ];
    const hasMilk = herd.groups.some((group) => group.classId === 'milk-cow');
    const head = Math.max(...context.herdDays[h]!.head);
    return anchors.flatMap(([anchor, date, key]) => {
      const templates = context.tables.herdTaskTemplates.filter(
        (t) => t.anchor === anchor && (!t.onlyMilk || hasMilk),
      );
      return hung(context, templates, date, { key, herdId: herd.id, head });
    });
  });
  const late = tasks.filter((task) => task.alreadyLate);
  if (0 < late.length) {
    context.issues.push(
      issue(
        'act',
        'herd-tasks-late',
        `${late.length} ${late.length === 1 ? 'piece' : 'pieces'} of herd work ${late.length === 1 ? 'is' : 'are'} already late: ${late
          .slice(0, 3)
          .map((t) => t.name.toLowerCase())
          .join('; ')}${3 < late.length ? ' …' : ''}.`,
      ),
    );
  }
  return tasks.sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
}

function hung(
  context: PastureContext,
  templates: readonly HerdTaskTemplate[],
  anchorDate: PlainDate,
  of: { key: string; herdId: string; head: number },
): HerdTask[] {
  const names = new Map(templates.map((t) => [t.id, t.name]));
  const units = { 'ten-head': of.head / 10, acre: context.areaM2 / M2_PER_ACRE };
  const dated = backSchedule(
    templates.map(
      ({ id, offsetDays, latestOffsetDays, lengthDays, hoursArePerDay, waitsFor }): HungTask => ({
        ...(latestOffsetDays === undefined ? {} : { latestOffsetDays }),
        id,
        anchorDate,
        offsetDays,
        lengthDays,
        isDaily: hoursArePerDay,
        waitsFor,
      }),
    ),
    context.today,
  );
  return dated.map((date, k): HerdTask => {
    const t = templates[k]!;
    const each = t.hoursBase + t.hoursPerUnit * units[t.per];
    const days = t.hoursArePerDay ? t.lengthDays : 1;
    return {
      id: `${of.key}.${t.id}`,
      templateId: t.id,
      name: t.name,
      herdId: of.herdId,
      anchor: t.anchor,
      start: date.start,
      end: date.end,
      latestStart: date.latestStart,
      slackDays: date.slackDays,
      alreadyLate: date.alreadyLate,
      hours: quantity(
        `Hours: ${t.name}`,
        each * days,
        'h',
        herdTaskFormulas.hours,
        [
          input('Base', t.hoursBase, 'h', 'b'),
          input(
            t.per === 'acre' ? 'For every acre' : 'For every ten head',
            t.hoursPerUnit,
            'h',
            'v',
          ),
          input(t.per === 'acre' ? 'Acres' : 'Tens of head', units[t.per], 'ratio', 'n'),
          input('Days', days, 'day'),
        ],
        { rows: [t] },
      ),
      ...(t.needs === undefined ? {} : { needs: t.needs }),
      ...(t.conditions === undefined ? {} : { conditions: t.conditions }),
      ...(t.ifNeeded ? { ifNeeded: true } : {}),
      ...(t.comesOver ? { comesOver: spanOf(anchorDate, t.comesOver) } : {}),
      waitsForIds: t.waitsFor.map((id) => `${of.key}.${id}`),
      isDaily: t.hoursArePerDay,
      waitsFor: [
        ...t.waitsFor.map((id) => names.get(id) ?? id),
        ...(t.waitsForOutside ?? []).map((who) => `the ${who}`),
      ],
      ifLate: t.ifLate,
    };
  });
}

function spanOf(
  anchor: PlainDate,
  { fromOffsetDays, days }: NonNullable<HerdTaskTemplate['comesOver']>,
): { from: PlainDate; to: PlainDate } {
  const from = addDays(anchor, fromOffsetDays);
  return { from, to: addDays(from, days - 1) };
}
