import type { Field } from './field.js';
import { shortOfHay } from './forage-energy.js';
import { GrazedDays, type HerdState } from './grazed-days.js';
import { isForMowing, type Way } from './grazing-rules.js';
import type { GrazingProblem, Stay } from './grazing-problem.js';
import type { Entry, StayStart } from './season-books.js';

/** What is tried in a look ahead, and for how many days. */
export interface Asked {
  readonly days: number;
  /** One paddock more shut, or topped. */
  readonly shut?: number;
  readonly topped?: number;
  /**
   * The herd that is to move on a day whose growth is over: what those before it ate is taken, and
   * its own feed alone is asked about. Left out, a look ahead begins before growth, for all herds.
   */
  readonly onMoveOf?: number;
  /** More feed than that need not be told exactly, kg. */
  readonly mostKg?: number;
  /** The same of feed that is needed before hay is made. */
  readonly mostBeforeHayKg?: number;
}

/**
 * What a look ahead finds: feed that the herds would need, kg, and paddocks they would go into. Where
 * grass to spare is asked about, grass that is poorer than hay counts only for its energy.
 */
export interface Ahead {
  readonly feedKg: number;
  /** Of it, what is needed before grass that is shut today lies as hay. */
  readonly beforeHayKg: number;
  readonly entered: ReadonlySet<number>;
  /** Of these, paddocks whose grass is far poorer than hay by the time that a herd goes in. */
  readonly grownOld: ReadonlySet<number>;
  /** And others that went rank before. */
  readonly wentRank: ReadonlySet<number>;
}

/** A look ahead has no first day of a plan. */
const AHEAD = -1;

/** The days to come, from a morning, in the usual weather and by the same rules. */
export class LookAhead extends GrazedDays {
  private feedKg = 0;
  private beforeHayKg = 0;
  private readonly entered = new Set<number>();
  private readonly grownOld = new Set<number>();
  private readonly wentRank = new Set<number>();

  constructor(
    problem: GrazingProblem,
    today: { readonly fields: readonly Field[]; readonly herds: readonly HerdState[] },
    private readonly day: number,
    private readonly asked: Asked,
  ) {
    const growsFrom = asked.onMoveOf === undefined ? day : day + 1;
    const clock = { after: growsFrom - 1 };
    super(
      { ...problem, from: AHEAD },
      today.fields.map((field, p) =>
        field.ahead(
          problem.usualFrom(p, growsFrom),
          growsFrom,
          clock,
          asked.onMoveOf === undefined,
        ),
      ),
      clock,
      today.herds,
    );
  }

  /** Stops where more feed is needed than is asked about. */
  look(): Ahead {
    const { problem, day, fields, herds } = this;
    const { days, shut, topped, onMoveOf } = this.asked;
    const { mostKg = Infinity, mostBeforeHayKg = Infinity } = this.asked;
    if (shut !== undefined) {
      fields[shut]!.shutFrom = day;
      this.seeTo(shut);
    }
    if (topped !== undefined) fields[topped]!.top(day);
    const to = Math.min(problem.to, day + days);
    for (let i = day; i < to; i++) {
      if (mostKg < this.feedKg || mostBeforeHayKg < this.beforeHayKg) break;
      const isGrown = i === day && onMoveOf !== undefined;
      if (!isGrown) this.growAndMow(i);
      for (let h = isGrown ? onMoveOf : 0; h < herds.length; h++) this.feed(h, i);
    }
    const { feedKg, beforeHayKg, entered, grownOld, wentRank } = this;
    return { feedKg, beforeHayKg, entered, grownOld, wentRank };
  }

  protected override note(h: number, day: number, eatenKg: number, feedKg: number): void {
    const { onMoveOf } = this.asked;
    if (onMoveOf !== undefined && onMoveOf !== h) return;
    this.feedKg += feedKg;
    const { hayGrowsDays, dryingDays } = this.problem.judged;
    if (day < this.day + hayGrowsDays + dryingDays) this.beforeHayKg += feedKg;
    const { at } = this.herds[h]!;
    if (onMoveOf !== undefined || at === undefined) return;
    const { digestibleEaten } = this.fields[at]!.stay!;
    this.feedKg += eatenKg * shortOfHay(digestibleEaten, this.problem.hayMcalPerKg[at]!);
  }

  /** Hands are not looked ahead for: each paddock is mown on its own day. */
  protected override gatherGo(): void {}

  protected override goOf(field: Field, _paddock: number, day: number): number | undefined {
    return isForMowing(this.problem, field, day) ? day : undefined;
  }

  /** What it would be missed for is what is asked. */
  protected override openFor(_herd: number, _day: number, open: Way | undefined): Way | undefined {
    return open;
  }

  /** Looks ahead are not nested. */
  protected override mayBegin(): boolean {
    return true;
  }

  protected override enter(stay: Stay, start: StayStart, entry: Entry): void {
    super.enter(stay, start, entry);
    const { paddock } = stay;
    const { digestibleEaten } = this.fields[paddock]!.stay!;
    const { judged, hayMcalPerKg } = this.problem;
    const isPoor = judged.oldGrassShare < shortOfHay(digestibleEaten, hayMcalPerKg[paddock]!);
    if (isPoor) this.grownOld.add(paddock);
    else if (this.stoodRank(stay)) this.wentRank.add(paddock);
    this.entered.add(paddock);
  }

  /** Asked of the first stay only: what was grazed since is another stand. */
  private stoodRank({ paddock, from }: Stay): boolean {
    if (this.asked.onMoveOf !== undefined || this.entered.has(paddock)) return false;
    const field = this.fields[paddock]!;
    return field.stoodAbove(field.sward.rankKgPerHa, this.day, from);
  }
}
