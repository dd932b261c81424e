import type { FarmPicture } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { formatValue } from '../../units/format.js';
import { planBatch } from '../batch-plan.js';
import { planningDay } from '../planning-day.js';
import { withFollows } from '../record/changed-by-fact.js';
import { weighedOff, weightAlarmKey, weightFollows } from '../record/weight-follows.js';
import { whatChanged } from '../what-changed.js';
import type { PlannedBatch } from '../work/dated-work.js';
import type { Alarm } from './looked-at.js';

/** What of a plan follows from weights; the rest of it has reasons of its own. */
const FOLLOWS: ReadonlySet<string> = new Set(['leaves', 'ready', 'weight', 'feed', 'bill']);

/**
 * Birds that were weighed so far from the plan that their last day or what is on the table is another: what
 * follows, and the other day of processing as a choice. Only for such a batch a second plan is made, the
 * one without its weights.
 */
export const weightAlarms = (
  picture: FarmPicture,
  tables: Tables,
  batches: readonly PlannedBatch[],
): Alarm[] =>
  batches.flatMap(({ id, name, plan }): Alarm[] => {
    const row = plan.birds.weighed?.rows.findLast(({ isUsed }) => isUsed);
    const batch = picture.batches.find((each) => each.id === id);
    const off = weighedOff(plan);
    if (!batch || !row || row.plannedKg === undefined || off === undefined) return [];
    const { slotWeightShare } = tables.judgements.birds;
    if (!plan.leaving || Math.abs(off) <= slotWeightShare.value) return [];
    const before = withoutWeights(picture, tables, batch);
    const follows = before && weightFollows({ picture, tables, batch, before, after: plan });
    if (!before || !follows) return [];
    if (Math.abs(follows.offShare) <= slotWeightShare.value) return [];
    const reader = { ...picture.farm, today: picture.today };
    const say = (kg: number): string => formatValue(kg, 'kg', reader);
    const than = follows.offShare < 0 ? 'lighter' : 'heavier';
    const changes = withFollows(
      whatChanged(before, plan, { reader, judged: tables.judgements.birds }),
      follows,
    ).filter((change) => FOLLOWS.has(change.id));
    return [
      {
        key: weightAlarmKey(id, off, tables.judgements.birds),
        isAlarm: true,
        level: 'act',
        words: `weighed ${than} than planned: what of the day of processing?`,
        text: [
          `On ${formatDate(row.on, reader)} they weighed ${say(row.average.value)} each, ${say(row.plannedKg)} were planned.`,
          ...changes.map(({ words }) => words),
        ].join(' '),
        ...{ of: name, place: { kind: 'batch', id } },
        ...(follows.choice ? { leaving: follows.choice } : {}),
      },
    ];
  });

function withoutWeights(
  picture: FarmPicture,
  tables: Tables,
  { id, ...batch }: FarmPicture['batches'][number],
) {
  const weighings = picture.weighings.filter(({ batchId }) => batchId !== id);
  const today = planningDay(batch, picture.today);
  try {
    return planBatch({ ...picture, weighings, today }, tables, id);
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}
