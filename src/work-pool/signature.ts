import { createHash } from 'node:crypto';

/** Short text that is the same for the same plain data, and for no other. */
export const signatureOf = (data: object): string =>
  createHash('sha256').update(JSON.stringify(data)).digest('base64');
