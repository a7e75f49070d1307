import { useState } from 'react';
import { FileChoice } from '../parts/file-choice';
import { forget, openFile, openListed, saveDocument, saveUnder } from '../state/files';
import { change, useWindow } from '../state/store';

/** The documents of the folder and those last used, and a way to bring any other file. */
export function OpenPanel() {
  const among = useWindow(window => window.among);
  return (
    <div className="open-panel">
      {among.length === 0 ? <p className="serif">There is no project in this folder yet.</p> : null}
      <ul>
        {among.map(document => (
          <li key={document.id} className="open-row">
            <button
              type="button"
              className="text-button"
              disabled={document.missing}
              onClick={() => void openListed(document.id)}
            >
              {document.name}
            </button>
            <span className="quiet">
              {document.missing ? 'no longer there' : `${document.folder}, ${document.modified.slice(0, 10)}`}
            </span>
          </li>
        ))}
      </ul>
      <FileChoice
        className="file-choice"
        title="From elsewhere"
        accept=".json,.reef.json"
        note="A file brought this way is saved under its name in the documents folder."
        onFile={file => void openFile(file)}
      />
    </div>
  );
}

/** A name for the document in the documents folder; one that is taken is replaced only when asked twice. */
export function SaveAsPanel() {
  const document = useWindow(window => window.document);
  const [name, setName] = useState(document?.name.replace(/\.reef\.json$/, '') ?? '');
  const [isTaken, setTaken] = useState(false);
  const save = async () => {
    if (name.trim() === '') return;
    setTaken((await saveUnder(name, isTaken)) === 'name-taken');
  };
  return (
    <form
      className="save-panel"
      onSubmit={event => {
        event.preventDefault();
        void save();
      }}
    >
      <label>
        <span className="head">Name</span>
        <input
          autoFocus
          className="wide-input"
          value={name}
          onChange={event => {
            setName(event.target.value);
            setTaken(false);
          }}
        />
      </label>
      <p className="quiet">It is saved in the documents folder as a file that ends in .reef.json.</p>
      {isTaken ? (
        <p className="field-fault" role="alert">
          A project of this name is already there. Saving replaces it; the version before is kept beside it.
          Choose another name, or save again.
        </p>
      ) : null}
      <button type="submit" className="main-button">
        {isTaken ? 'Replace it' : 'Save'}
      </button>
    </form>
  );
}

/** Before a document with unsaved edits is left. */
export function ClosePanel() {
  const save = async () => {
    if (await saveDocument()) forget();
  };
  return (
    <div className="close-panel">
      <p className="serif">Save them, leave them, or go on working.</p>
      <div className="why-buttons">
        <button type="button" className="main-button" autoFocus onClick={() => void save()}>
          Save
        </button>
        <button type="button" className="plain-button" onClick={forget}>
          Leave them unsaved
        </button>
        <button type="button" className="plain-button" onClick={() => change({ panel: 'none' })}>
          Go on working
        </button>
      </div>
    </div>
  );
}
