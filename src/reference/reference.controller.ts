import { Controller, Get, Header } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Formula } from '../../shared/explain/formula.js';
import type { Tables } from '../../shared/tables/tables.js';
import { TablesService } from './tables.service.js';
import { Answers, AnswersList } from '../common/answers.js';
import { FORMULA, TABLES } from '../common/plan-answers.js';

@ApiTags('reference')
@Controller('reference')
export class ReferenceController {
  constructor(private readonly reference: TablesService) {}

  /** Every published table with its sources and marks. */
  @Answers(TABLES)
  @Get('tables')
  @Header('Cache-Control', 'no-cache')
  tables(): Tables {
    return this.reference.tables;
  }

  /** Every formula that a quantity may name. */
  @AnswersList(FORMULA)
  @Get('formulas')
  async formulas(): Promise<Formula[]> {
    // They stand beside the code of all plans, which nothing else needs on this thread.
    const { FORMULAS } = await import('../../shared/formulas/formulas.js');
    return [...FORMULAS.values()];
  }
}
