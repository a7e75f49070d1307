import type { Sentence } from '../../core/views';
import { Says } from '../parts/figure';
import { Notices } from './notices';

export interface Face {
  readonly id: string;
  readonly title: string;
}

interface TitleLineProps {
  readonly sentence: Sentence;
  readonly faces?: readonly Face[];
  readonly face?: string;
  readonly onFace?: (face: string) => void;
}

/** The sentence of the view, and the switches between its faces. */
export function TitleLine({ sentence, faces = [], face, onFace }: TitleLineProps) {
  return (
    <>
      <div className="title-line">
        <span className="being-made">Being worked out again</span>
        <h1 className="sentence">
          <Says sentence={sentence} />
        </h1>
        {faces.length === 0 ? null : (
          <div className="view-switches" role="group" aria-label="Faces of this view">
            {faces.map(one => (
              <button
                key={one.id}
                type="button"
                className="switch"
                aria-pressed={one.id === face}
                onClick={() => onFace?.(one.id)}
              >
                {one.title}
              </button>
            ))}
          </div>
        )}
      </div>
      <Notices />
    </>
  );
}
