import { Table, type MigrationInterface, type QueryRunner, type TableColumnOptions } from 'typeorm';
import { tableOfFarm } from './table-of-farm.js';

/** The first tables. Written with the schema builder, so that SQLite and PostgreSQL get the same. */
export class FirstTables1764000000000 implements MigrationInterface {
  name = 'FirstTables1764000000000';

  async up(runner: QueryRunner): Promise<void> {
    const text = (
      name: string,
      length: number,
      more: Partial<TableColumnOptions> = {},
    ): TableColumnOptions => ({ name, type: 'varchar', length: String(length), ...more });
    const number = (name: string, more: Partial<TableColumnOptions> = {}): TableColumnOptions => ({
      name,
      type: 'double precision',
      ...more,
    });
    const json = (name: string): TableColumnOptions => ({ name, type: 'text' });
    const key = { isPrimary: true };
    const farmId = text('farmId', 36);
    // SQLite keeps yes and no as 1 and 0.
    const no = runner.connection.options.type === 'postgres' ? 'false' : '0';

    await runner.createTable(
      new Table({
        name: 'farms',
        columns: [
          text('id', 36, key),
          text('name', 80),
          number('latitudeDeg'),
          number('longitudeDeg'),
          number('elevationM'),
          text('timeZone', 64),
          text('units', 8),
          text('currency', 3),
          text('electricityPricePerKWh', 20),
          text('gasPricePerL', 20),
          json('monthlyMinC'),
          json('monthlyMaxC'),
          text('lastFrost', 5),
          text('firstFrost', 5),
          json('noDeliveryDates'),
          { name: 'isSample', type: 'boolean', default: no },
          { name: 'weatherFetch', type: 'boolean', default: no },
          { name: 'revision', type: 'integer', default: 1 },
        ],
      }),
    );
    await runner.createTable(
      tableOfFarm('facilities', [
        text('id', 64, key),
        farmId,
        text('kind', 16),
        text('name', 80),
        json('details'),
      ]),
    );
    await runner.createTable(
      tableOfFarm('people', [text('id', 64, key), farmId, text('name', 80), json('away')]),
    );
    await runner.createTable(
      tableOfFarm('batches', [
        text('id', 64, key),
        farmId,
        text('name', 80),
        { name: 'arrivalDate', type: 'date' },
        json('details'),
      ]),
    );
    await runner.createTable(
      tableOfFarm(
        'weather_days',
        [
          text('farmId', 36, key),
          text('kind', 8, key),
          { name: 'date', type: 'date', ...key },
          number('minC'),
          number('maxC'),
          number('rainMm', { isNullable: true }),
        ],
        { isFoundByKey: true },
      ),
    );
    await runner.createTable(
      new Table({
        name: 'published_tables',
        columns: [text('name', 40, key), text('sha256', 64), json('content')],
      }),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of [
      'published_tables',
      'weather_days',
      'batches',
      'people',
      'facilities',
      'farms',
    ]) {
      await runner.dropTable(name);
    }
  }
}
