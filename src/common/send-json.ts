import type { Response } from 'express';

/** Sends the bytes of JSON as they are: text would be encoded anew for every answer. */
export function sendJson(response: Response, bytes: Uint8Array): void {
  response.setHeader('Content-Type', 'application/json; charset=utf-8');
  response.setHeader('Content-Length', bytes.byteLength);
  response.end(bytes);
}
