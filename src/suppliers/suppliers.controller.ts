import { Controller } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { supplierFields } from '../../shared/farm/supplier.js';
import { rowsController } from '../rows/rows-controller.js';
import { SupplierDto } from './supplier.dto.js';
import { SuppliersService } from './suppliers.service.js';

@ApiTags('products')
@Controller('farms/:farmId/suppliers')
export class SuppliersController extends rowsController(supplierFields, SupplierDto) {
  constructor(suppliers: SuppliersService) {
    super(suppliers);
  }
}
