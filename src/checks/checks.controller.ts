import { Controller, Get, Header } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Check } from '../../shared/checks/compare.js';
import { AnswersList } from '../common/answers.js';
import { CHECK } from '../common/plan-answers.js';
import { SharedAnswers } from '../work-pool/shared-answers.js';
import { WorkPool } from '../work-pool/work-pool.service.js';

@ApiTags('reference')
@Controller('reference/checks')
export class ChecksController {
  /** They hang on nothing but the tables, which stay the same while the program runs. */
  private readonly kept = new SharedAnswers<Check[]>(1);

  constructor(private readonly work: WorkPool) {}

  /** What the program computes beside values from outside, worked out when first asked for. */
  @AnswersList(CHECK)
  @Get()
  @Header('Cache-Control', 'no-cache')
  checks(): Promise<Check[]> {
    return this.kept.of('checks', () => this.work.run('runChecks', undefined));
  }
}
