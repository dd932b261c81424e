import type { Response } from 'express';

/** Sends the bytes of JSON as they are: text would be encoded anew for every answer. */
export function sendJson(response: Response, bytes: Uint8Array): void {
  const { buffer, byteOffset, byteLength } = bytes;
  response.type('json').send(Buffer.from(buffer, byteOffset, byteLength));
}
