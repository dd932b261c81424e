import { supplierFields } from '../../shared/farm/supplier.js';
import { dtoOf } from '../common/dto-of.js';

export class SupplierDto extends dtoOf(supplierFields) {}
