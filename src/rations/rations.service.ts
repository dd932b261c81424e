import { Injectable } from '@nestjs/common';
import { checkedRation } from '../../shared/ration/check-ration.js';
import { rationOf, type Ration } from '../../shared/ration/ration.js';
import { tablesIn } from '../../shared/tables/in-own-units.js';
import { FarmsService } from '../farms/farms.service.js';
import { ProductsService } from '../products/products.service.js';
import { TablesService } from '../reference/tables.service.js';
import type { RationAskedDto } from './ration.dto.js';
import { loadSolver } from './solver.js';

/** Mixes feed of what a farm can buy. Nothing of it is kept. */
@Injectable()
export class RationsService {
  constructor(
    private readonly farms: FarmsService,
    private readonly products: ProductsService,
    private readonly tables: TablesService,
  ) {}

  async rationOf(farmId: string, asked: RationAskedDto): Promise<Ration> {
    const farm = await this.farms.findOne(farmId);
    const products = await this.products.findAll(farmId);
    const tables = tablesIn(farm.units, this.tables.tables);
    const checked = checkedRation(asked, { products, farm }, tables);
    return rationOf(checked, tables, await loadSolver());
  }
}
