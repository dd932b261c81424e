import { farmDocumentFields } from '../../shared/farm/farm-document.js';
import { dtoOf } from '../common/dto-of.js';

/** A whole farm in one document, nothing saved: the body of every preview, the terminal's file. */
export class FarmDocumentDto extends dtoOf(farmDocumentFields) {}
