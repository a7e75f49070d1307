import type { Sentence, Shown } from '../../core/views';
import { askWhy } from '../state/why';

/** A figure as text. One with a derivation is a button that opens it. */
export function Figure({ shown, className = '' }: { shown: Shown; className?: string }) {
  const tone =
    shown.absent === true ? 'missing' : shown.accent === true ? 'accent' : shown.text === '–' ? 'dash' : '';
  const words = `${tone} ${className}`.trim();
  const pad =
    shown.pad === undefined || shown.pad === '' ? null : (
      <span className="hidden-digits" aria-hidden="true">
        {shown.pad}
      </span>
    );
  const why = shown.why;
  if (why === undefined) {
    return (
      <span className={words}>
        {shown.text}
        {pad}
      </span>
    );
  }
  return (
    <button type="button" className={`figure ${words}`} data-why={why} onClick={() => void askWhy(why)}>
      {shown.text}
      {pad}
    </button>
  );
}

/** A sentence with its figures, each of which can be asked about. */
export function Says({ sentence }: { sentence: Sentence }) {
  return (
    <>
      {sentence.map((part, at) =>
        typeof part === 'string' ? part : <Figure key={`${at}-${part.why ?? part.text}`} shown={part} />,
      )}
    </>
  );
}

/** A sentence as plain words, for those who hear it. */
export function spoken(sentence: Sentence): string {
  return sentence.map(part => (typeof part === 'string' ? part : part.text)).join('');
}
