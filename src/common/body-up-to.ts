import type { IncomingMessage } from 'node:http';

/**
 * The bytes of a body, chunk by chunk, never more than so many: a larger one is refused at its first
 * word where it says how large it is, else once that many came.
 *
 * @param tooLarge what is thrown, by the bytes that are known of
 */
export async function* bodyUpTo(
  body: IncomingMessage,
  mostBytes: number,
  tooLarge: (bytes: number) => Error,
): AsyncGenerator<Buffer> {
  try {
    const said = Number(body.headers['content-length'] ?? 0);
    if (mostBytes < said) throw tooLarge(said);
    let bytes = 0;
    for await (const chunk of body.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (mostBytes < bytes) throw tooLarge(bytes);
      yield chunk;
    }
  } finally {
    // The rest of what is refused is let go, so that the answer arrives.
    body.resume();
  }
}
