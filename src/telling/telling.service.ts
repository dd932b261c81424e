import { Injectable } from '@nestjs/common';
import { daysBetween } from '../../shared/calendar/plain-date.js';
import { movesKey } from '../../shared/farm/herd-move-work.js';
import { byHerd, grazingsOfHerd } from '../../shared/farm/herd-places.js';
import { isUnseen } from '../../shared/farm/told-seen.js';
import type { HerdMove, ToldFact } from '../../shared/farm/told-fact.js';
import { toldWithBefore } from '../../shared/plan/pasture/move-told.js';
import { movesMeant } from '../../shared/plan/pasture/moves-assumed.js';
import { PastureService } from '../pasture/pasture.service.js';
import { PicturesService } from '../picture/pictures.service.js';
import { TablesService } from '../reference/tables.service.js';
import type { Said } from '../told/keep-facts.js';
import { ToldService } from '../told/told.service.js';
import { WorkService } from '../work/work.service.js';

type Move = Said & { readonly details: HerdMove['details'] };

/** A move can have been planned between two days only where a day lies between them. */
const LEAST_DAYS_APART = 2;

/** What is told from outside, with what holds by it of what the plan had assumed. */
@Injectable()
export class TellingService {
  constructor(
    private readonly told: ToldService,
    private readonly pictures: PicturesService,
    private readonly pasture: PastureService,
    private readonly tables: TablesService,
    private readonly work: WorkService,
  ) {}

  async tell(farmId: string, facts: readonly Said[]): Promise<ToldFact[]> {
    await this.work.refuseLongHours(farmId, facts);
    const before: Said[] = [];
    for (const move of movesByThemselves(facts))
      before.push(...(await this.assumedBefore(farmId, move)));
    if (before.length === 0) return this.told.tell(farmId, facts);
    const fieldOf = (k: number, field: string): string =>
      `facts.${Math.max(0, k - before.length)}.${field}`;
    const kept = await this.told.tell(farmId, [...before, ...facts], fieldOf);
    return kept.slice(before.length);
  }

  /**
   * The moves of a herd before one that is told by itself, where nothing was told of it for days: the
   * page tells them with it, but neither another program nor a phone that read the plan before that.
   */
  private async assumedBefore(farmId: string, { about, on, key, seen }: Move): Promise<Said[]> {
    const moves = byHerd(await this.told.movesOf(farmId)).get(about) ?? [];
    const last = moves.at(-1);
    const stay = grazingsOfHerd(about, moves).at(-1);
    if (!last || !stay || stay.to !== undefined) return [];
    if (daysBetween(stay.seenOn ?? stay.from, on) < LEAST_DAYS_APART) return [];
    // Told one after the other on a phone without signal, or sent twice: nothing lay between them.
    const isOfPhone = isUnseen({ toldAt: last.toldAt, key: '' }, seen);
    if (isOfPhone || (key !== undefined && (await this.told.hasKey(farmId, key)))) return [];
    const saved = await this.pictures.of(farmId);
    // What is told of longer ago is how it was written down: nothing is assumed of it.
    const { recentDays } = this.tables.tables.judgements.alarms;
    if (recentDays.value < daysBetween(on, saved.picture.today)) return [];
    const { pasture } = await this.pasture.planned(saved);
    const assumed = movesMeant(pasture?.assumedMoves, about);
    return toldWithBefore({ herdId: about, assumed }, on)
      .slice(0, -1)
      .map((move, k) => (key === undefined ? move : { ...move, key: `${key}-${k + 1}-before` }));
  }
}

/** Moves of herds of which nothing else is told with them. */
function movesByThemselves(facts: readonly Said[]): Move[] {
  const moves = facts.filter((fact): fact is Move => fact.kind === 'herd-move');
  return moves.filter(({ about, details, replaces }) => {
    const isOnly = moves.filter((move) => move.about === about).length === 1;
    const { work = movesKey(about), isTyped, isStill } = details;
    return isOnly && replaces === undefined && work === movesKey(about) && !isTyped && !isStill;
  });
}
