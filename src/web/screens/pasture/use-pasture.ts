import { useEffect, useMemo, useRef, useState } from 'react';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { FieldProblem } from '../../../../shared/problems/field-problem.js';
import { useWork } from '../../api/work-queries.js';
import { fittedDays, type FittedDays } from '../../../../shared/plan/work/fitted-days.js';
import type { Answered } from './plan.worker.js';

export interface PlannedPasture {
  /** The last plan; it stays while the next is worked out. */
  readonly plan?: PasturePlan;
  readonly problems?: readonly FieldProblem[];
  readonly failed?: string;
  readonly isWorking: boolean;
}

/** Plans a farm's pasture in a worker with the same core as the service, whenever it changes. */
export function usePasturePlan(picture: FarmPicture | undefined, tables: Tables): PlannedPasture {
  const [planned, setPlanned] = useState<PlannedPasture>({ isWorking: true });
  const worker = useRef<Worker>(undefined);
  const asked = useRef(0);
  useEffect(() => {
    const own = new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module' });
    worker.current = own;
    own.onmessage = ({ data }: MessageEvent<Answered>) => {
      // An answer to an earlier question is of no use any more.
      if (data.id !== asked.current) return;
      if ('plan' in data) setPlanned({ plan: data.plan, isWorking: false });
      else if ('problems' in data) setPlanned({ problems: data.problems, isWorking: false });
      else setPlanned({ failed: data.failed, isWorking: false });
    };
    return () => own.terminate();
  }, []);
  useEffect(() => {
    if (!picture) return;
    asked.current++;
    setPlanned((before) => ({ ...before, isWorking: true }));
    worker.current?.postMessage({ id: asked.current, picture, tables });
  }, [picture, tables]);
  return planned;
}

/** The days that Work has found; undefined while they are asked for. */
export function useFittedDays(farmId: string): FittedDays | undefined {
  const { data } = useWork(farmId);
  return useMemo(() => data && fittedDays(data), [data]);
}
