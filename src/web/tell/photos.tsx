import './photos.css';
import { usePhotoUrl } from '../api/photos.js';

interface Props {
  readonly farmId: string;
  readonly ids: readonly string[];
  /** What they are of, in words. */
  readonly of: string;
  /** They are printed, so that all are there before anybody scrolls. */
  readonly isOnPaper?: boolean;
}

/** Photos of a note in a row, small; each opens large. */
export function Photos({ farmId, ids, of, isOnPaper = false }: Props) {
  if (ids.length === 0) return null;
  return (
    <ul className={isOnPaper ? 'photos photos-printed' : 'photos'} aria-label={`Photos: ${of}`}>
      {ids.map((id, k) => (
        <li key={id}>
          <Photo
            farmId={farmId}
            id={id}
            words={ids.length === 1 ? `Photo: ${of}` : `Photo ${k + 1} of ${ids.length}: ${of}`}
            isOnPaper={isOnPaper}
          />
        </li>
      ))}
    </ul>
  );
}

function Photo({
  farmId,
  id,
  words,
  isOnPaper,
}: {
  farmId: string;
  id: string;
  words: string;
  isOnPaper: boolean;
}) {
  const url = usePhotoUrl(farmId, id);
  if (url === undefined) return <span className="photo" />;
  return (
    <a href={url} target="_blank" rel="noreferrer">
      <img className="photo" src={url} alt={words} {...(isOnPaper ? {} : { loading: 'lazy' })} />
    </a>
  );
}
