import type { UnitSystem } from '../../../shared/units/unit.js';

/** What to begin with where no farm says it: most of those who read American English use pounds. */
export const browserUnits = (): UnitSystem => (navigator.language === 'en-US' ? 'us' : 'metric');
