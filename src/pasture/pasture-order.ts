import { plainDateAt } from '../../shared/calendar/plain-date.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { Paddock } from '../../shared/farm/paddock.js';
import type { PastureRequest } from '../../shared/plan/pasture/pasture-request.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import type { Tables } from '../../shared/tables/tables.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { checkedCorners, outlineAreaM2 } from '../paddocks/outline.js';
import type { PastureOrderDto } from './pasture.dto.js';

/** A self-contained pasture as a plan request: used by the preview and by the terminal alike. */
export function requestOfPasture(
  order: PastureOrderDto,
  tables: Tables,
  nowMs: number,
): PastureRequest {
  const { farm } = order;
  return {
    farm,
    tables,
    climate: climateFromMonthlyMeans(
      farm.monthlyMinC,
      farm.monthlyMaxC,
      tables.heat.coldNightMarginK.value,
      farm.monthlyRainMm,
    ),
    today: order.today ?? plainDateAt(nowMs, farm.timeZone),
    paddocks: order.paddocks.map((paddock, i): Paddock => {
      const at = `paddocks.${i}.`;
      const { outline, areaM2, ...rest } = paddock;
      if (areaM2 === undefined && outline === undefined) throw missing(`${at}areaM2`);
      return {
        ...rest,
        id: idOf(paddock, at),
        areaM2: areaM2 ?? outlineAreaM2(outline, `${at}outline`),
        ...(outline === undefined ? {} : { outline: checkedCorners(outline, `${at}outline`) }),
      };
    }),
    herds: order.herds.map((herd, i): Herd => ({ ...herd, id: idOf(herd, `herds.${i}.`) })),
    readings: (order.readings ?? []).map((r, i) => ({ ...r, id: `reading-${i + 1}` })),
    followers: order.followers ?? [],
    choices: order.choices ?? {},
  };
}

function idOf({ id }: { id?: string }, at: string): string {
  if (id === undefined) throw missing(`${at}id`);
  return id;
}

const missing = (field: string): FieldError =>
  new FieldError([
    {
      field,
      code: 'missing',
      given: undefined,
      fix: field.endsWith('id')
        ? 'Give each an id of your own, so that the rest can name it.'
        : 'Give the area, or the outline it is worked out from.',
    },
  ]);
