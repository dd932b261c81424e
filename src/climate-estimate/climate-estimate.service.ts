import { Injectable } from '@nestjs/common';
import { estimatedClimate, type EstimatedClimate } from '../../shared/farm/estimated-climate.js';
import {
  estimateClimate,
  type EstimateRegion,
  type Spot,
} from '../../shared/weather/climate-estimate.js';
import { TablesService } from '../reference/tables.service.js';
import { loadRegions } from './load-regions.js';

/** Climates from coordinates and height, without asking anybody. */
@Injectable()
export class ClimateEstimateService {
  /** Read when first asked for, which a farm is once in its life. */
  private regions: readonly EstimateRegion[] | undefined;

  constructor(private readonly tables: TablesService) {}

  /** The estimate, or undefined where the coefficients do not reach. */
  find(place: Spot & { readonly elevationM: number }): EstimatedClimate | undefined {
    this.regions ??= loadRegions();
    const estimate = estimateClimate(this.regions, place);
    return estimate && estimatedClimate(estimate, this.tables.tables.nights.likeness.value);
  }
}
