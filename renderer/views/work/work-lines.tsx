import { useEffect, useRef, useState, type RefObject } from 'react';
import type { WorkLine } from '../../../core/views';
import { BasisMark } from '../../parts/basis-mark';
import { InlineField } from '../../parts/field';
import { Figure } from '../../parts/figure';
import { useIsPrinting } from '../../parts/printing';
import { change, useWindow } from '../../state/store';

/** So many lines are drawn together. */
const LIST = 40;
/** How far above and below the view lists are drawn, so that Tab and a short scroll find them there. */
const MARGIN = '900px 0px';

interface WorkLinesProps {
  readonly lines: readonly WorkLine[];
  /** Of a long project only what is near the view is kept in the page. */
  readonly isLong: boolean;
}

/** The lines of a stage; of a long project in lists, drawn when they come near the view and on paper. */
export function WorkLines({ lines, isLong }: WorkLinesProps) {
  const isPrinting = useIsPrinting();
  if (!isLong || isPrinting) return <LineList lines={lines} />;
  return listsOf(lines).map(list => <NearList key={list[0]?.id} lines={list} />);
}

function listsOf(lines: readonly WorkLine[]): readonly (readonly WorkLine[])[] {
  const lists: (readonly WorkLine[])[] = [];
  for (let at = 0; at < lines.length; at += LIST) lists.push(lines.slice(at, at + LIST));
  return lists;
}

function LineList({ lines }: { lines: readonly WorkLine[] }) {
  return (
    <ul>
      {lines.map(line => (
        <Line key={line.id} line={line} />
      ))}
    </ul>
  );
}

/** A list that leaves its room empty while it is far from the view, unless it holds the chosen line. */
function NearList({ lines }: { lines: readonly WorkLine[] }) {
  const room = useRef<HTMLDivElement>(null);
  const holdsChosen = useWindow(window => lines.some(line => line.id === window.chosen));
  const { isNear, height } = useNear(room);
  const isDrawn = isNear || holdsChosen;
  const empty = height ?? `calc(${lines.length} * 2 * var(--row))`;
  return (
    <div ref={room} style={isDrawn ? undefined : { height: empty }}>
      {isDrawn ? <LineList lines={lines} /> : null}
    </div>
  );
}

interface Near {
  readonly isNear: boolean;
  /** Its height when it was last drawn. */
  readonly height: string | undefined;
}

function useNear(room: RefObject<HTMLDivElement | null>): Near {
  const [near, setNear] = useState<Near>({ isNear: false, height: undefined });
  useEffect(() => {
    const element = room.current;
    if (element === null) return;
    const watch = new IntersectionObserver(
      entries => {
        const last = entries.at(-1);
        if (last === undefined) return;
        setNear(before => ({
          isNear: last.isIntersecting,
          height: before.isNear ? `${last.boundingClientRect.height}px` : before.height,
        }));
      },
      { root: element.closest('.surface'), rootMargin: MARGIN },
    );
    watch.observe(element);
    return () => watch.disconnect();
  }, [room]);
  return near;
}

function Line({ line }: { line: WorkLine }) {
  const isChosen = useWindow(window => window.chosen === line.id);
  const item = useRef<HTMLLIElement>(null);
  const [hasNote, setNote] = useState(line.note.value !== '');
  useEffect(() => {
    if (isChosen) item.current?.scrollIntoView({ block: 'nearest' });
  }, [isChosen]);
  return (
    <li
      ref={item}
      className={isChosen ? 'work-line chosen' : 'work-line'}
      data-subject={line.id}
      onFocus={() => {
        if (!isChosen) change({ chosen: line.id });
      }}
    >
      <div className="work-says">
        <p>
          <strong className="work-title">{line.title}.</strong>{' '}
          {line.says.map((part, at) =>
            typeof part === 'string' ? (
              part
            ) : part.edit === undefined ? (
              <Figure key={`${at}-${part.why ?? ''}`} shown={part} />
            ) : (
              <InlineField key={`${at}-${part.edit.at}`} edit={part.edit} />
            ),
          )}
        </p>
        {hasNote ? null : (
          <button type="button" className="note-button" onClick={() => setNote(true)}>
            Note
          </button>
        )}
        {line.quotes.map(quote => (
          <p key={quote} className="quiet">
            {quote}
          </p>
        ))}
        {hasNote ? (
          <p className="quiet note-line">
            Note: <InlineField edit={line.note} className="words note-input" />
          </p>
        ) : null}
        {line.findings.map(words => (
          <p key={words} className="field-fault">
            {words}
          </p>
        ))}
      </div>
      <span className="work-hours">
        <Figure shown={line.hours} />
      </span>
      <span className="work-cost">
        <Figure shown={line.cost} />
      </span>
      <span className="work-basis">{line.basis === undefined ? null : <BasisMark basis={line.basis} />}</span>
    </li>
  );
}
