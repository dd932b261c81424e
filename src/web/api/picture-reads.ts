import { withChanged } from '../../../shared/farm/picture-since.js';
import { getDated, type Dated } from './client.js';

/** Pictures of farms as they were read last from the service, by their path. */
const known = new Map<string, Dated<object>>();

/** Whether a path is that of a farm's picture. */
export const isPicture = (path: string): boolean => path.endsWith('/picture');

/** A picture: of one that was read before no more than what has changed since is asked for. */
export async function readPicture<T>(path: string, signal?: AbortSignal): Promise<Dated<T>> {
  const before = known.get(path);
  const since = before?.mark === undefined ? '' : `?since=${before.mark}`;
  const answer = await getDated<object>(`${path}${since}`, signal);
  const isPart = before !== undefined && answer.since !== undefined && answer.since === before.mark;
  const whole = isPart ? { ...answer, data: withChanged(before.data, answer.data) } : answer;
  known.set(path, whole);
  return whole as Dated<T>;
}
