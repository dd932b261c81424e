import 'reflect-metadata';
import { restore } from '../archive/restore.js';
import { dataSourceOptions } from '../database/data-source.js';
import { rowsText, runCopying } from './copying.js';

const USAGE = `Brings back what npm run backup copied. Stop Broodfold first.

  npm run restore -- FILE.zip

The file is checked before anything is touched, and the database that is there now is kept under
another name. It uses the same DATA_DIR or DATABASE_URL as npm start: a copy of a file can be
brought back into PostgreSQL, and the other way round.`;

await runCopying(USAGE, async ([file]) => {
  if (file === undefined) return undefined;
  const { manifest, keptAs } = await restore(dataSourceOptions(), file);
  const kept = keptAs === undefined ? '' : ` What was there before is kept as ${keptAs}.`;
  return `Brought back ${rowsText(manifest.tables)}, copied on ${manifest.madeAt}.${kept}`;
});
