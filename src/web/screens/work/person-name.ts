import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';

export const personName = ({ people }: WorkPlan, id: string): string =>
  people.find((person) => person.id === id)?.name ?? id;
