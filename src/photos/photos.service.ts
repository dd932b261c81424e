import { Injectable, NotFoundException } from '@nestjs/common';
import type { IncomingMessage } from 'node:http';
import { LessThan, type EntityManager } from 'typeorm';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { Database } from '../database/database.js';
import { checkId, isId } from '../database/ids.js';
import { PhotoEntity } from './photo.entity.js';
import { receivePhoto } from './receive-photo.js';

/** Photos of one farm, MB: some fifteen hundred of a phone's, and a file of it can be read back. */
const MOST_MB = 500;
/** A note that names a photo may come this much later; until then the phone has it as well, days. */
const UNTOLD_DAYS = 30;

/** Keeps photos. One that was sent is never changed; it goes with its farm. */
@Injectable()
export class PhotosService {
  constructor(private readonly database: Database) {}

  /** Keeps a photo under its id: sent again it stays the one that is there. */
  async keep(farmId: string, id: string, body: IncomingMessage): Promise<void> {
    checkId(farmId);
    const jpeg = (await receivePhoto(body)).toString('base64');
    if (!isId(id)) throw new FieldError([noId(id)]);
    const bytes = Buffer.byteLength(jpeg, 'base64');
    const keep = async (manager: EntityManager): Promise<void> => {
      const before = await manager.findOneBy(PhotoEntity, { id });
      if (before?.farmId === farmId && before.jpeg === jpeg) return;
      if (before) throw new FieldError([otherUnderId(id)]);
      await manager.delete(PhotoEntity, { farmId, isTold: false, sentAt: LessThan(daysAgo()) });
      const there = (await manager.sum(PhotoEntity, 'bytes', { farmId })) ?? 0;
      if (MOST_MB * 1e6 < there + bytes) throw new FieldError([noRoom(there + bytes)]);
      const sentAt = new Date().toISOString();
      await manager.insert(PhotoEntity, { id, farmId, sentAt, isTold: false, bytes, jpeg });
    };
    await this.database.write(farmId, keep, { raises: false });
  }

  /** @throws NotFoundException when the farm has no photo with the id */
  async find(farmId: string, id: string): Promise<Buffer> {
    const row =
      isId(farmId) && isId(id)
        ? await this.database.manager.findOneBy(PhotoEntity, { id, farmId })
        : null;
    if (!row) throw new NotFoundException(`This farm has no photo "${id.slice(0, 64)}".`);
    return Buffer.from(row.jpeg, 'base64');
  }
}

const daysAgo = (): string => new Date(Date.now() - UNTOLD_DAYS * 24 * 3_600_000).toISOString();

const noId = (given: string): FieldProblem => ({
  field: 'id',
  code: 'not-allowed',
  given: given.slice(0, 64),
  allowed: ['1 to 64 letters, digits and dashes'],
  fix: 'Give the photo an id that nothing else has.',
});

const otherUnderId = (given: string): FieldProblem => ({
  field: 'id',
  code: 'conflict',
  given,
  fix: 'Another photo was sent under this id. Give what is new an id of its own.',
});

const noRoom = (bytes: number): FieldProblem => ({
  field: 'photo',
  code: 'out-of-bounds',
  given: Math.ceil(bytes / 1e6),
  max: MOST_MB,
  unit: 'MB of photos',
  fix: 'This farm is full of photos. Save it as a file and go on with a new farm, or tell it without a photo.',
});
