import type { Tables } from '../../tables/tables.js';
import type { StartDefaults } from './start-defaults.js';

/** What is at hand while a farm is begun. */
export interface StartSetting {
  readonly defaults: StartDefaults;
  readonly tables: Tables;
  readonly newId: () => string;
}
