import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiProperty, ApiTags } from '@nestjs/swagger';
import { OneOf, YesNo } from '../common/field-rules.js';
import { checkDto } from '../common/check-dto.js';
import { ForecastDto } from './forecast.dto.js';
import { WeatherService, type WeatherView } from './weather.service.js';

export class FetchSettingDto {
  @ApiProperty() @YesNo() allowed!: boolean;
}

class KindDto {
  @OneOf(['csv', 'fetched']) kind!: 'csv' | 'fetched';
}

@ApiTags('weather')
@Controller('farms/:farmId/weather')
export class WeatherController {
  constructor(private readonly weather: WeatherService) {}

  @Get()
  view(@Param('farmId') farmId: string): Promise<WeatherView> {
    return this.weather.view(farmId);
  }

  /** Switches fetching on or off. Off is the default: fetching tells the service where the farm is. */
  @Put('fetching')
  allowFetch(
    @Param('farmId') farmId: string,
    @Body() { allowed }: FetchSettingDto,
  ): Promise<WeatherView> {
    return this.weather.allowFetch(farmId, allowed);
  }

  @Post('fetch')
  @HttpCode(200)
  fetch(@Param('farmId') farmId: string): Promise<WeatherView> {
    return this.weather.fetch(farmId);
  }

  /** Daily history as CSV: date, tmin_c or tmin_f, tmax_c or tmax_f, and prcp_mm or prcp_in. */
  @Put('csv')
  @ApiConsumes('text/csv')
  @ApiBody({ schema: { type: 'string' } })
  importCsv(@Param('farmId') farmId: string, @Body() text: unknown): Promise<WeatherView> {
    return this.weather.importCsv(farmId, text);
  }

  /** The forecast of the next days, typed as JSON or as CSV like daily history; [] forgets it. */
  @Put('forecast')
  @ApiConsumes('application/json', 'text/csv')
  @ApiBody({ type: ForecastDto })
  setForecast(@Param('farmId') farmId: string, @Body() body: unknown): Promise<WeatherView> {
    return this.weather.setForecast(
      farmId,
      typeof body === 'string' ? body : checkDto(ForecastDto, body),
    );
  }

  @Delete(':kind')
  @HttpCode(200)
  forget(@Param('farmId') farmId: string, @Param('kind') kind: string): Promise<WeatherView> {
    return this.weather.forget(farmId, checkDto(KindDto, { kind }).kind);
  }
}
