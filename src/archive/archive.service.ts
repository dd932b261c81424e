import { Injectable } from '@nestjs/common';
import { InjectDataSource } from '@nestjs/typeorm';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IncomingMessage } from 'node:http';
import { DataSource } from 'typeorm';
import { FieldError } from '../../shared/problems/field-problem.js';
import { bodyUpTo } from '../common/body-up-to.js';
import { Database } from '../database/database.js';
import type { FarmView } from '../farms/farm.dto.js';
import { FarmsService } from '../farms/farms.service.js';
import { inSnapshot } from './snapshot.js';

/** Thirty years of weather are half a megabyte; photos a farm holds up to 500 MB. */
const LARGEST_MB = 700;

/** A farm's archive in a place of its own, until it has been sent. */
export interface FarmFile {
  readonly path: string;
  readonly name: string;
  readonly remove: () => Promise<void>;
}

/** Reading and writing of archives is loaded when somebody asks for it: few starts see that. */
@Injectable()
export class ArchiveService {
  constructor(
    @InjectDataSource() private readonly source: DataSource,
    private readonly database: Database,
    private readonly farms: FarmsService,
  ) {}

  /** Everything that belongs to a farm in one file, as it is at one moment. */
  async write(farmId: string): Promise<FarmFile> {
    const { name } = await this.farms.findOne(farmId);
    const { writeArchive } = await import('./write-archive.js');
    return inFolder(async (folder, remove) => {
      const path = join(folder, 'farm.zip');
      // It is written whole before it is sent, so that a slow phone holds nothing up.
      const { madeAt } = await inSnapshot(this.source, (runner) =>
        writeArchive(path, runner, { farmId }),
      );
      return { path, name: `broodfold-${slug(name)}-${madeAt.slice(0, 10)}.zip`, remove };
    });
  }

  /** Makes a new farm of a file, or nothing. */
  async read(body: IncomingMessage): Promise<FarmView> {
    const { readFarm } = await import('./read-farm.js');
    return inFolder(async (folder, remove) => {
      const path = join(folder, 'farm.zip');
      await receive(body, path);
      const { source, database } = this;
      const id = await readFarm({ source, write: (work) => database.writeNew(work) }, path);
      const farm = await this.farms.findOne(id);
      await remove();
      return farm;
    });
  }
}

/** A folder for a while; it goes when the work fails, else with `remove`. */
async function inFolder<T>(
  work: (folder: string, remove: () => Promise<void>) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'broodfold-'));
  const remove = (): Promise<void> => rm(folder, { recursive: true, force: true });
  try {
    return await work(folder, remove);
  } catch (error) {
    await remove();
    throw error;
  }
}

async function receive(body: IncomingMessage, path: string): Promise<void> {
  const file = await open(path, 'wx');
  let bytes = 0;
  try {
    for await (const chunk of bodyUpTo(body, LARGEST_MB * 1e6, tooLarge)) {
      bytes += chunk.length;
      await file.write(chunk);
    }
  } finally {
    await file.close();
  }
  if (bytes === 0)
    throw new FieldError([
      {
        field: 'file',
        code: 'missing',
        given: undefined,
        fix: 'Send the file as the body, with the content type application/zip.',
      },
    ]);
}

const tooLarge = (bytes: number): FieldError =>
  new FieldError([
    {
      field: 'file',
      code: 'out-of-bounds',
      given: Math.ceil(bytes / 1e6),
      max: LARGEST_MB,
      unit: 'MB',
      fix: 'Choose a file that "Download this farm" made. A whole database is brought back with `npm run restore`.',
    },
  ]);

/** A farm's name as part of the name of a file. */
const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '') || 'farm';
