import type { Person } from '../../farm/farm.js';
import type { Starter } from '../../farm/start.js';
import type { StartDefaults } from './start-defaults.js';

/** The people of a household, with hours by when they said to have time. */
export function startPeople(
  starters: readonly Starter[],
  defaults: StartDefaults,
  newId: () => string,
): Person[] {
  const counts = { adult: 0, child: 0 };
  return starters.map(({ name, isChild = false, childAge, free, away = [] }) => {
    const count = (counts[isChild ? 'child' : 'adult'] += 1);
    const called = isChild ? `Child ${count}` : `Adult ${count}`;
    const times = free === undefined ? undefined : defaults.freeTimes[free];
    const hours =
      times ??
      (isChild ? { hoursByWeekday: defaults.childHoursByWeekday[childAge ?? 'under-8'] } : {});
    return {
      id: newId(),
      name: name ?? called,
      ...(isChild ? { isChild } : {}),
      away,
      ...hours,
      assumed: [
        ...(name === undefined ? ['name'] : []),
        // When somebody has time, or how old a child is, was chosen with the hours of it in sight.
        ...(times === undefined && childAge === undefined ? ['hoursByWeekday'] : []),
        ...(times === undefined ? [] : ['startH']),
      ],
    };
  });
}
