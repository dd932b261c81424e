import { Controller } from '@nestjs/common';
import { ApiExtraModels, ApiTags } from '@nestjs/swagger';
import { anyProduct } from '../../shared/farm/product.js';
import { sentNames } from '../common/dto-of.js';
import { schemaOf } from '../common/schema-of.js';
import { rowsController } from '../rows/rows-controller.js';
import { PRODUCT_DTOS } from './product.dto.js';
import { ProductsService } from './products.service.js';

const ANY_PRODUCT = { schema: schemaOf(anyProduct, sentNames) };

@ApiTags('products')
@ApiExtraModels(...PRODUCT_DTOS)
@Controller('farms/:farmId/products')
export class ProductsController extends rowsController(anyProduct, ANY_PRODUCT) {
  constructor(products: ProductsService) {
    super(products);
  }
}
