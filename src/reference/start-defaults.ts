import type { StartDefaults } from '../../shared/plan/start/start-defaults.js';
import { parsedSeed, readSeed } from './load-tables.js';

const FILE = 'start.json';

/** What a farm is begun with where nobody says it. */
export const startDefaults = (): StartDefaults => parsedSeed(FILE, readSeed(FILE)) as StartDefaults;
