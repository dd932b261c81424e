import { plainFormulas } from '../explain/plain-formulas.js';
import {
  from,
  fromRow,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Spread,
} from '../explain/quantity.js';
import { facilityOf, type FieldPen } from '../farm/facility.js';
import { FROST_CAUTIONS, isFrost } from '../farm/heat-caution.js';
import { spaceFormulas } from '../poultry/space.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { floorHad, floorHadM2 } from './floor-had.js';
import type { PlanContext } from './context.js';
import { coopRoomOf, shortOfCoop } from './coop-room.js';
import { found, joined, type Found } from './found.js';
import { homeSpaceOf, type HomeSpace } from './home-space.js';
import { sayNights } from './say-ways-out.js';
import { planShelter, type ShelterPart } from './shelter.js';
import { waysOut } from './ways-out.js';
import { intoTheCoop, whenOut, type WhenOutPart } from './when-out.js';

export interface OutdoorsPart extends WhenOutPart, ShelterPart {
  readonly rule: string;
  readonly home?: string;
  readonly floorNeeded?: NumberQuantity;
  readonly floorHave?: NumberQuantity;
  readonly pensNeeded?: NumberQuantity;
  readonly movesPerDay?: NumberQuantity;
  readonly ground?: NumberQuantity;
  readonly nitrogen?: NumberQuantity;
  readonly density?: NumberQuantity;
  readonly nests?: NumberQuantity;
  readonly roost?: NumberQuantity;
}

export function planOutdoors(context: PlanContext): Found<OutdoorsPart> {
  const { moveOutRule: rule, moveOutDay, batch } = context;
  if (moveOutDay === undefined) {
    const ways = waysOut(context);
    if (context.tooFewDaysOut !== undefined) {
      const late = tooLate(context, context.tooFewDaysOut);
      return found({ rule: rule.name, waysOut: ways }, { issues: [late] });
    }
    const bolder = ways.find(({ out, isByAge }) => out !== undefined && !isByAge);
    const never = issue(
      'act',
      'no-warm-nights',
      `No date before ${batch.purpose === 'meat' ? 'the birds leave' : 'the end of the plan'} has each of its first nights warm enough on ${context.nightSurety.name} (${rule.name}). ${bolder?.out ? `They could go out ${context.say(bolder.out.on.value, 'date')} (${bolder.name}); ${sayNights(bolder.out.coldNights.value)} of the first week would then be too cold for them. ` : ''}Keep the heat on indoors, choose another rule, or order for another week.`,
    );
    return found({ rule: rule.name, waysOut: ways }, { issues: [never] });
  }
  const out = (context.life.isStarted ? intoTheCoop : whenOut)(context, moveOutDay);
  const shelter = planShelter(context, moveOutDay);
  const home = (batch.purpose === 'meat' ? onGrass : inCoop)(context, moveOutDay);
  const { life, weather } = context;
  const freezes = weather.coldMinC.subarray(moveOutDay, life.days).some(isFrost);
  return found(
    { rule: rule.name, ...out.part, ...shelter.part, ...home.part },
    joined([{ cautions: ['cold', ...(freezes ? FROST_CAUTIONS : [])] }, out, shelter, home]),
  );
}

/** Nights that are warm enough only days before the birds leave are no reason for a move. */
const tooLate = ({ life, dateOf, say, tables }: PlanContext, daysOut: number): PlanIssue =>
  issue(
    'act',
    'move-too-late',
    `Nights are warm enough for them only from ${say(dateOf(life.days - 1 - daysOut), 'date')}, ${say(daysOut, 'day')} before they leave: too late to be worth a pen, a fence and a move, so they stay in. Order for a later week, let them go out sooner with heat in the pen, or see that the brooder has the room and air for large birds.`,
    [tables.judgements.birds.leastDaysOut],
  );

function onGrass(context: PlanContext, day: number): Found<Partial<OutdoorsPart>> {
  const { batch, tables, facilities, life } = context;
  const pens = facilityOf(facilities, 'field-pen', batch.penId);
  const coop = facilityOf(facilities, 'coop', batch.coopId);
  const space = homeSpaceOf(context);
  const birds = life.aliveAll[day]!;
  const floorNeeded = quantity(
    'Floor needed outdoors',
    birds * space.floorM2,
    'm2',
    spaceFormulas.floor,
    [input('Birds at the move', birds, 'count', 'N'), space.each],
    { rows: [life.losses], spread: spreadOf(space, birds) },
  );
  const home = pens ?? coop;
  if (!home) {
    return found({ floorNeeded }, { issues: [NO_PEN] });
  }
  const onePenM2 = home.floorM2;
  const have = floorHadM2(home);
  const needed = Math.ceil(floorNeeded.value / onePenM2 - 1e-9);
  const endBirds = life.aliveAll[life.days - 1]!;
  const endKg = endBirds * life.meanWeightKg[life.days - 1]!;
  const density = endKg / have;
  const cap = tables.space.liveWeightCapKgPerM2;
  const issues: PlanIssue[] = [];
  if (have + 1e-9 < floorNeeded.value) {
    issues.push(
      issue(
        'act',
        'pens-short',
        `${home.name} gives ${context.say(have, 'm2')} for ${Math.round(birds)} birds, which need ${context.say(floorNeeded.value, 'm2')}. ${pens ? `Build ${needed - pens.count} more.` : 'Add room.'}`,
        space.rows,
      ),
    );
  }
  if (cap.value < density) {
    issues.push(
      issue(
        'act',
        'stocking-density',
        `At the end the stocking density in the pens is ${context.say(density, 'kgPerM2')}; indoor welfare standards for meat chickens stop at ${context.say(cap.value, 'kgPerM2')} to ${context.say(cap.high, 'kgPerM2')}. Add a pen or process part of the batch earlier.`,
        [cap],
      ),
    );
  }
  const shared: Partial<OutdoorsPart> = {
    home: home.name,
    floorNeeded,
    floorHave: quantity('Floor you have', have, 'm2', plainFormulas.measured, [
      fromRow(home, 'floorM2', 'One pen', onePenM2, 'm2'),
      ...(pens ? [fromRow(pens, 'count', 'Pens', pens.count, 'count')] : []),
    ]),
    density: quantity(
      'Stocking density at the end',
      density,
      'kgPerM2',
      spaceFormulas.density,
      [
        input('Birds at the end', endBirds, 'count', 'N'),
        input('Live weight', life.meanWeightKg[life.days - 1]!, 'kg', 'W'),
        floorHad(home, 'Floor', 'A'),
      ],
      { rows: [life.losses, ...life.weightRows] },
    ),
  };
  if (!pens) return found(shared, { issues });
  const moved = movedPens(context, day, pens, needed);
  return found({ ...shared, ...moved }, { issues, cautions: ['manure'] });
}

/** What sources leave open of the floor that birds need; nothing of a figure of one's own. */
const spreadOf = ({ range }: HomeSpace, birds: number): Spread | undefined =>
  range && { low: birds * range.low, high: birds * range.high, because: range.because };

const NO_PEN = issue(
  'note',
  'no-pen',
  'No field pen or coop is chosen for after the move, so pens, ground and manure are not worked out.',
);

function movedPens(
  context: PlanContext,
  day: number,
  pens: FieldPen,
  needed: number,
): Partial<OutdoorsPart> {
  const { batch, tables, life } = context;
  const usual = tables.space.penMoves;
  const { each } = homeSpaceOf(context);
  const moves = batch.movesPerDay ?? usual.perDay;
  const movesInput = givenOrTable(
    batch.movesPerDay !== undefined,
    usual,
    ...(['Moves a day', moves, 'ratio', 'm'] as const),
  );
  const daysOut = life.days - 1 - day;
  const groundM2 = floorHadM2(pens) * Math.max(1, moves * daysOut);
  const manure = tables.manure[batch.purpose];
  let nKg = 0;
  for (let i = day; i < life.days - 1; i++) {
    nKg += manure.nKgPerDayPerKgLive * life.aliveAll[i]! * life.meanWeightKg[i]!;
  }
  const ground = quantity('Ground covered', groundM2, 'm2', spaceFormulas.ground, [
    floorHad(pens, 'Floor of all pens'),
    movesInput,
    input('Days on grass', daysOut, 'day', 'D'),
  ]);
  return {
    pensNeeded: quantity('Pens needed', needed, 'count', spaceFormulas.pens, [
      input('Birds at the move', life.aliveAll[day]!, 'count', 'N'),
      each,
      fromRow(pens, 'floorM2', 'One pen', pens.floorM2, 'm2', 'A_pen'),
    ]),
    movesPerDay: quantity('Pen moves a day', moves, 'ratio', spaceFormulas.ground, [movesInput], {
      spread: { low: usual.low, high: usual.high, because: usual.because },
    }),
    ground,
    nitrogen: quantity(
      'Manure nitrogen on that ground',
      nKg / (groundM2 / 10000),
      'kgPerHa',
      spaceFormulas.nitrogen,
      [
        input('Nitrogen in all', nKg, 'kg'),
        from(ground, 'G', 'Ground'),
        fromTable(manure, 'A day per kg live', manure.nKgPerDayPerKgLive * 1000, 'g'),
      ],
      { rows: [life.losses, ...life.weightRows] },
    ),
  };
}

function inCoop(context: PlanContext, day: number): Found<Partial<OutdoorsPart>> {
  const { tables, life } = context;
  const per = tables.space.coop;
  const options = { rows: [per, life.losses] };
  const space = homeSpaceOf(context);
  const room = coopRoomOf(context, day);
  const { coop, birds, hens, nests, roostCm } = room;
  const isShort = shortOfCoop(room);
  const floorNeeded = quantity(
    'Coop floor needed',
    room.floorM2,
    'm2',
    spaceFormulas.floor,
    [input('Birds at the move', birds, 'count', 'N'), space.each],
    { rows: [life.losses], spread: spreadOf(space, birds) },
  );
  const short: string[] = [];
  if (coop && isShort.floor)
    short.push(
      `floor ${context.say(coop.floorM2, 'm2')} of ${context.say(floorNeeded.value, 'm2')}`,
    );
  if (coop && isShort.nests) short.push(`${coop.nestBoxes} of ${nests} nest boxes`);
  if (coop && isShort.roost)
    short.push(`roost ${context.say(coop.roostM, 'm')} of ${context.say(roostCm / 100, 'm')}`);
  const issues: PlanIssue[] = [];
  if (0 < short.length)
    issues.push(issue('act', 'coop-short', `${coop!.name} is short of: ${short.join('; ')}.`));
  if (!coop) issues.push(NO_COOP);
  const part: Partial<OutdoorsPart> = {
    ...(coop
      ? {
          home: coop.name,
          floorHave: quantity('Coop floor you have', coop.floorM2, 'm2', plainFormulas.measured, [
            fromRow(coop, 'floorM2', 'Floor', coop.floorM2, 'm2'),
          ]),
        }
      : {}),
    floorNeeded,
    nests: quantity(
      'Nest boxes',
      nests,
      'count',
      plainFormulas.nests,
      [input('Hens', hens, 'count'), input('Hens a nest', per.hensPerNest, 'count')],
      {
        ...options,
        spread: {
          low: Math.ceil(hens / per.hensPerNestHigh),
          high: Math.ceil(hens / per.hensPerNestLow),
          because: `one nest for ${per.hensPerNestLow} to ${per.hensPerNestHigh} hens`,
        },
      },
    ),
    roost: quantity(
      'Roost',
      roostCm / 100,
      'm',
      spaceFormulas.edge,
      [input('Birds', birds, 'count', 'N'), input('Roost a bird', per.roostCm, 'cm', 'l')],
      options,
    ),
  };
  return found(part, { issues });
}

const NO_COOP = issue(
  'note',
  'no-coop',
  'No coop is chosen for after the move. Choose one to compare it with the need.',
);
