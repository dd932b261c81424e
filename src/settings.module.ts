import { Global, Module } from '@nestjs/common';
import { readSettings } from './settings.js';

/** Token of the settings that the program was started with. */
export const SETTINGS = Symbol('settings');

@Global()
@Module({
  providers: [{ provide: SETTINGS, useFactory: () => readSettings() }],
  exports: [SETTINGS],
})
export class SettingsModule {}
