import { Body, Controller, Delete, Get, HttpCode, Param, Post, Put } from '@nestjs/common';
import { ApiBadGatewayResponse, ApiBody, ApiConsumes, ApiTags } from '@nestjs/swagger';
import { choice, row, yesNo } from '../../shared/farm/field.js';
import { checkDto } from '../common/check-dto.js';
import { dtoOf } from '../common/dto-of.js';
import { ForecastDto } from './forecast.dto.js';
import { WeatherService } from './weather.service.js';
import { Answers } from '../common/answers.js';
import { weatherViewFields, type WeatherView } from './weather-view.js';

export class FetchSettingDto extends dtoOf(
  row('FetchSetting', { allowed: yesNo('Weather may be fetched') }),
) {}

class KindDto extends dtoOf(row('Kind', { kind: choice('Kind', ['csv', 'fetched']) })) {}

@ApiTags('weather')
@Controller('farms/:farmId/weather')
export class WeatherController {
  constructor(private readonly weather: WeatherService) {}

  @Answers(weatherViewFields)
  @Get()
  view(@Param('farmId') farmId: string): Promise<WeatherView> {
    return this.weather.view(farmId);
  }

  /** Switches fetching on or off. Off is the default: fetching tells the service where the farm is. */
  @Answers(weatherViewFields)
  @Put('fetching')
  allowFetch(
    @Param('farmId') farmId: string,
    @Body() { allowed }: FetchSettingDto,
  ): Promise<WeatherView> {
    return this.weather.allowFetch(farmId, allowed);
  }

  @Answers(weatherViewFields)
  @Post('fetch')
  @HttpCode(200)
  @ApiBadGatewayResponse({ description: 'The weather service gave nothing. Nothing was changed.' })
  fetch(@Param('farmId') farmId: string): Promise<WeatherView> {
    return this.weather.fetch(farmId);
  }

  /** Daily history as CSV: date, tmin_c or tmin_f, tmax_c or tmax_f, and prcp_mm or prcp_in. */
  @Answers(weatherViewFields)
  @Put('csv')
  @ApiConsumes('text/csv')
  @ApiBody({ schema: { type: 'string' } })
  importCsv(@Param('farmId') farmId: string, @Body() text: unknown): Promise<WeatherView> {
    return this.weather.importCsv(farmId, text);
  }

  /** The forecast of the next days, typed as JSON or as CSV like daily history; [] forgets it. */
  @Answers(weatherViewFields)
  @Put('forecast')
  @ApiConsumes('application/json', 'text/csv')
  @ApiBody({ type: ForecastDto })
  setForecast(@Param('farmId') farmId: string, @Body() body: unknown): Promise<WeatherView> {
    return this.weather.setForecast(
      farmId,
      typeof body === 'string' ? body : checkDto(ForecastDto, body),
    );
  }

  @Answers(weatherViewFields)
  @Delete(':kind')
  @HttpCode(200)
  forget(@Param('farmId') farmId: string, @Param('kind') kind: string): Promise<WeatherView> {
    return this.weather.forget(farmId, checkDto(KindDto, { kind }).kind);
  }
}
