import type { SeasonPlan } from '../../../../shared/plan/season/season-plan.js';

/** Hours as people say them: 0.25 h is 15 min. */
export function hoursText(hours: number): string {
  const minutes = Math.round(hours * 60);
  const [h, min] = [Math.floor(minutes / 60), minutes % 60];
  if (h === 0) return `${min} min`;
  return min === 0 ? `${h} h` : `${h} h ${min} min`;
}

export const personName = ({ people }: SeasonPlan, id: string): string =>
  people.find((person) => person.id === id)?.name ?? id;
