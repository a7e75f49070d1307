import { useId, useState } from 'react';

interface FileChoiceProps {
  readonly title: string;
  /** Endings of the files that can be chosen; any file without them. */
  readonly accept?: string;
  readonly className?: string;
  /** How the title is set: a head of its own, or the label of a field. */
  readonly titleClass?: string;
  readonly note?: string;
  readonly isDisabled?: boolean;
  readonly onFile: (file: File) => void;
}

/** Chooses a file of the reader's, in the words of this window: the browser's own are of its language. */
export function FileChoice({
  title,
  accept,
  className = '',
  titleClass = 'head',
  note,
  isDisabled = false,
  onFile,
}: FileChoiceProps) {
  const id = useId();
  const [name, setName] = useState('');
  return (
    <label className={className}>
      <span className={titleClass} id={id}>
        {title}
      </span>
      <span className="file-line">
        <input
          type="file"
          className="unseen"
          aria-labelledby={id}
          accept={accept}
          disabled={isDisabled}
          onChange={event => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file === undefined) return;
            setName(file.name);
            onFile(file);
          }}
        />
        <span className="plain-button">Choose a file</span>
        <span className="quiet">{name === '' ? 'none chosen yet' : name}</span>
      </span>
      {note === undefined ? null : <span className="quiet">{note}</span>}
    </label>
  );
}
