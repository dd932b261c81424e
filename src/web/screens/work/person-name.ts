import type { SeasonPlan } from '../../../../shared/plan/season/season-plan.js';

export const personName = ({ people }: SeasonPlan, id: string): string =>
  people.find((person) => person.id === id)?.name ?? id;
