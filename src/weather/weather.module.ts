import { Module } from '@nestjs/common';
import { FarmsModule } from '../farms/farms.module.js';
import { OpenWeatherClient } from './open-weather.client.js';
import { WeatherController } from './weather.controller.js';
import { WeatherService } from './weather.service.js';

@Module({
  imports: [FarmsModule],
  controllers: [WeatherController],
  providers: [WeatherService, OpenWeatherClient],
  exports: [WeatherService, OpenWeatherClient],
})
export class WeatherModule {}
