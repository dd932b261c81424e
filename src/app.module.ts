import { Module } from '@nestjs/common';
import { ServeStaticModule } from '@nestjs/serve-static';
import { TypeOrmModule } from '@nestjs/typeorm';
import { join } from 'node:path';
import { ArchiveModule } from './archive/archive.module.js';
import { copyBeforeUpdate } from './archive/copy-before-update.js';
import { BatchesModule } from './batches/batches.module.js';
import { CalendarModule } from './calendar/calendar.module.js';
import { ClimateEstimateModule } from './climate-estimate/climate-estimate.module.js';
import { ChecksModule } from './checks/checks.module.js';
import { dataFolder, dataSourceOptions } from './database/data-source.js';
import { DatabaseModule } from './database/database.module.js';
import { openDatabase } from './database/open-database.js';
import { FacilitiesModule } from './facilities/facilities.module.js';
import { FarmsModule } from './farms/farms.module.js';
import { FeedModule } from './feed/feed.module.js';
import { GrassReadingsModule } from './grass-readings/grass-readings.module.js';
import { SheetsModule } from './sheets/sheets.module.js';
import { HolidaysModule } from './holidays/holidays.module.js';
import { HerdsModule } from './herds/herds.module.js';
import { PaddocksModule } from './paddocks/paddocks.module.js';
import { PastureModule } from './pasture/pasture.module.js';
import { JobsModule } from './jobs/jobs.module.js';
import { SampleFarmModule } from './sample-farm/sample-farm.module.js';
import { WorkModule } from './work/work.module.js';
import { ProductsModule } from './products/products.module.js';
import { SuppliersModule } from './suppliers/suppliers.module.js';
import { keptByBrowsers } from './kept-by-browsers.js';
import { PeopleModule } from './people/people.module.js';
import { PhotosModule } from './photos/photos.module.js';
import { PictureModule } from './picture/picture.module.js';
import { PlacesModule } from './places/places.module.js';
import { PlansModule } from './plans/plans.module.js';
import { PROJECT_ROOT } from './reference/load-tables.js';
import { RationsModule } from './rations/rations.module.js';
import { RecordModule } from './record/record.module.js';
import { ReferenceModule } from './reference/reference.module.js';
import { SettingsModule } from './settings/settings.module.js';
import { StartModule } from './start/start.module.js';
import { TellingModule } from './telling/telling.module.js';
import { TodayModule } from './today/today.module.js';
import { TrustModule } from './trust/trust.module.js';
import { WeatherModule } from './weather/weather.module.js';
import { WorkPoolModule } from './work-pool/work-pool.module.js';
import { NextYearModule } from './next-year/next-year.module.js';
import { YearModule } from './year/year.module.js';

@Module({
  imports: [
    TypeOrmModule.forRootAsync({
      // What cannot be opened is said at once; trying again would only hide it.
      useFactory: () => ({ ...dataSourceOptions(), toRetry: () => false }),
      dataSourceFactory: (options) =>
        openDatabase(options!, (source) => copyBeforeUpdate(source, dataFolder())),
    }),
    DatabaseModule,
    ServeStaticModule.forRoot({
      rootPath: join(PROJECT_ROOT, 'dist', 'web'),
      exclude: ['/api', '/api/{*rest}'],
      serveStaticOptions: { setHeaders: keptByBrowsers },
    }),
    SettingsModule,
    ReferenceModule,
    HolidaysModule,
    WorkPoolModule,
    ChecksModule,
    FarmsModule,
    FacilitiesModule,
    ProductsModule,
    SuppliersModule,
    PeopleModule,
    BatchesModule,
    WeatherModule,
    ClimateEstimateModule,
    PlacesModule,
    PictureModule,
    PlansModule,
    RationsModule,
    RecordModule,
    PaddocksModule,
    HerdsModule,
    GrassReadingsModule,
    PastureModule,
    TellingModule,
    PhotosModule,
    JobsModule,
    WorkModule,
    TodayModule,
    YearModule,
    NextYearModule,
    FeedModule,
    SheetsModule,
    CalendarModule,
    SampleFarmModule,
    StartModule,
    ArchiveModule,
    TrustModule,
  ],
})
export class AppModule {}
