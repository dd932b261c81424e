import { NotFoundException } from '@nestjs/common';

/** Ids as this program makes them. A database may refuse other text, such as one with a zero byte. */
export const isId = (text: string): boolean => /^[A-Za-z0-9-]{1,64}$/.test(text);

export function checkId(farmId: string): void {
  if (!isId(farmId)) throw farmNotFound(farmId);
}

export const farmNotFound = (id: string): NotFoundException =>
  new NotFoundException(`There is no farm with the id "${id.slice(0, 64)}".`);
