import 'reflect-metadata';
import { checkDto } from '../common/check-dto.js';
import { LARGE } from '../common/body-weight.js';
import { FarmDocumentDto } from '../picture/farm-document.dto.js';
import { OrderDto } from '../plans/order.dto.js';

/** Bodies that hold a whole farm: their rules take long enough to be checked in a thread. */
const LARGE_BODIES: readonly (new () => object)[] = [FarmDocumentDto, OrderDto];

/** Whether bodies of a class may be large, and are then checked in a thread. */
export const mayBeLarge = (dto: new () => object): boolean => LARGE_BODIES.includes(dto);

/** @throws FieldError with what the rules of the class of that name found */
export function checkLargeBody({ name, body }: { name: string; body: unknown }): void {
  const dto = LARGE_BODIES.find((each) => each.name === name);
  if (!dto) throw new Error(`There is no large body named ${name}.`);
  checkDto(dto, body, '', LARGE);
}
