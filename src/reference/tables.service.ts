import { Injectable } from '@nestjs/common';
import type { Tables } from '../../shared/tables/tables.js';
import { loadTables } from './load-tables.js';

/** The published tables, read from seeds/ once. */
@Injectable()
export class TablesService {
  readonly tables: Tables = loadTables();
}
