import { Injectable } from '@nestjs/common';
import { FORMULAS } from '../../shared/formulas/formulas.js';
import type { Formula } from '../../shared/explain/formula.js';
import type { Tables } from '../../shared/tables/tables.js';
import { loadTables } from './load-tables.js';

/** The published tables, read from seeds/ once, and the formulas that work with them. */
@Injectable()
export class TablesService {
  readonly tables: Tables = loadTables();
  readonly formulas: readonly Formula[] = [...FORMULAS.values()];
}
