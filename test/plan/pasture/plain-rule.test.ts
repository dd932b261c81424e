import { describe, expect, it } from '@jest/globals';
import { pastureContext } from '../../../shared/plan/pasture/pasture-context.js';
import { planHay } from '../../../shared/plan/pasture/hay-part.js';
import { besidePlainRule, ruleIsBetter } from '../../../shared/plan/pasture/plain-rule.js';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';

const contextOf = (paddocks: number, head: number, makesHay: boolean) =>
  pastureContext(
    newPastureRequest({
      paddocks: newPaddocks(paddocks, { areaM2: 48_000 / paddocks, forageId: 'mixed' }),
      herds: [newHerd({ groups: [newGroup({ head })] })],
      choices: { makesHay },
    }),
  );

describe('a plan beside a plain rule', () => {
  it('says so wherever the rule leaves clearly less hay to buy, and nowhere else', () => {
    const said = [4, 6, 12].flatMap((paddocks) =>
      [3, 8, 14].flatMap((head) =>
        [true, false].map((makesHay) => {
          const context = contextOf(paddocks, head, makesHay);
          const chosen = chooseMoves(context);
          const { part, issues } = planHay(context, chosen);
          const { saved, rulesGainKg } = besidePlainRule(context, chosen, {
            toBuyKg: part.toBuy.value,
            hayPerDryKg: part.toStore.value / part.all.value,
          });
          expect(saved.value).toBeCloseTo(part.saved.value);
          const need = context.herdDays[0]!.demandKg.subarray(
            context.span.from,
            context.span.to,
          ).reduce((a, b) => a + b, 0);
          const isSaid = issues?.some(({ code }) => code === 'plain-rule-better') ?? false;
          expect(isSaid).toBe(0.02 * need < rulesGainKg);
          return isSaid;
        }),
      ),
    );
    expect(new Set(said).size).toBe(2);
  });

  it('names what the rule makes and feeds, in words that fit a farm without hay', () => {
    const textOf = (makesHay: boolean): string => {
      const context = contextOf(12, 3, makesHay);
      const beside = besidePlainRule(context, chooseMoves(context), {
        ...{ toBuyKg: 10_000, hayPerDryKg: 1.4 },
      });
      return ruleIsBetter(context, { ...beside, rulesGainKg: 1000 }, 10_000)[0]!.text;
    };
    expect(textOf(true)).toContain('1,000 kg less hay would be to buy');
    expect(textOf(true)).toMatch(/it makes [\d,]+ kg of hay and feeds/);
    expect(textOf(false)).not.toContain('makes');
  });
});
