import { it } from '@jest/globals';
import { exampleOrder } from '../support/orders.js';
import { newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';

it('looks', () => {
  const order = exampleOrder();
  const out: string[] = [];
  for (const [name, k, swing] of [
    ['cold', -8, 0],
    ['example', 0, 0],
    ['mild', 7, -1],
    ['hot', 16, 2],
  ] as const) {
    for (const count of [2])
      for (const lid of [true, false])
        for (const closesOff of [false, true]) {
          if (closesOff || (name !== 'hot' && !lid)) continue;
          const farm = {
            ...order.farm,
            units: 'metric' as const,
            monthlyMinC: order.farm.monthlyMinC!.map((c) => c + k),
            monthlyMaxC: order.farm.monthlyMaxC!.map((c) => c + k + swing),
          };
          const facilities = order.facilities.map((f) => {
            if (f.kind !== 'brooder') return f;
            const { roof, ...open } = f;
            return { ...(lid ? f : open), closesOff, heat: { ...f.heat, count } };
          });
          const plan = plannedBatch(
            newRequest({
              farm,
              facilities: facilities as never,
              batch: order.batch,
              climate: climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6),
              tables,
              today: order.today,
            }),
          );
          const h = plan.heat!;
          out.push(
            `== ${name} lamps ${count} lid ${lid} closesOff ${closesOff}: need ${h.need.value} (${h.need.spread!.low}-${h.need.spread!.high}) needed ${h.heatersNeeded.value} rule ${h.rules.lampRule?.value} enough ${h.enough} night ${h.coldestNight.value} low ${h.coldestNightLow.value} E ${h.energyTotal.value} (${h.energyTotal.spread!.low}-${h.energyTotal.spread!.high}) out ${plan.outdoors.moveOut?.value}`,
          );
          out.push(
            `  closeOff ${h.closeOff && JSON.stringify([h.closeOff.energySaved.value, h.closeOff.moneySaved.value, ...h.closeOff.weeks.map((w) => [w.from, w.floor.value])])} tooClose ${h.clearance?.tooCloseOn?.value}`,
          );
          for (const w of h.weeks)
            out.push(
              `  ${w.from} d${w.fromAgeDays}: night ${w.night.around.value.toFixed(1)} "${w.night.words}" under ${w.night.underHeat?.value.toFixed(1)} air ${w.night.air.value.toFixed(1)} | noon ${w.noon.around.value.toFixed(1)} "${w.noon.words}" under ${w.noon.underHeat?.value.toFixed(1)} air ${w.noon.air.value.toFixed(1)} | day ${w.day.around.value.toFixed(1)} ${w.day.words} ${w.day.underHeat?.value.toFixed(1)} ${w.day.air.value.toFixed(1)} left ${w.ifLeft?.value.toFixed(1)} ${w.hot ? 'HOT' : ''}`,
            );
          for (const i of plan.issues)
            if (/heat|brooder|lamp|circuit/.test(i.code))
              out.push(`  [${i.level}] ${i.code}: ${i.text}`);
        }
  }
  console.log(out.join('\n'));
});
