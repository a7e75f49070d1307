import { useState } from 'react';
import type { ReturnedPaper } from '../../../electron/channels';
import type { KnownFigure, TakeBackPreview } from '../../../core/papers';
import type { Project } from '../../../core/project';
import { FileChoice } from '../../parts/file-choice';
import { takeSections } from '../../edits/lists';
import { engine } from '../../engine/engine';
import { host } from '../../host/bridge';
import { Figure } from '../../parts/figure';
import { textNow, valueOf } from '../../state/files';
import { change, state, useWindow } from '../../state/store';
import { edit } from '../../state/working-out';

interface Looked {
  readonly name: string;
  /** The document as it stood when the paper was looked through. */
  readonly project: Project | undefined;
  readonly paper: ReturnedPaper;
}

/** Takes a workbook or CSV file of inputs back: what it would change, and then one step to undo. */
export function TakeBack() {
  const [looking, setLooking] = useState('');
  const [looked, setLooked] = useState<Looked>();
  const look = async (file: File) => {
    setLooked(undefined);
    setLooking(file.name);
    setLooked(await lookedThrough(file));
    setLooking('');
  };
  return (
    <div className="take-back">
      <FileChoice
        className="evidence-choice"
        titleClass="add-label"
        title="Workbook or CSV file of inputs that came back"
        accept=".xlsx,.csv"
        isDisabled={looking !== ''}
        onFile={file => void look(file)}
      />
      <p role="status" className="quiet">
        {looking === '' ? '' : `Looking through ${looking} …`}
      </p>
      {looked === undefined ? (
        <p className="serif">
          Choose the file. Nothing is changed before you have seen what it would change.
        </p>
      ) : (
        <Preview looked={looked} onTaken={() => setLooked(undefined)} />
      )}
    </div>
  );
}

function Preview({ looked, onTaken }: { looked: Looked; onTaken: () => void }) {
  const { preview, findings, text } = looked.paper;
  return (
    <>
      <h2 className="head">{looked.name}</h2>
      {preview === undefined ? null : <p>{preview.summary}</p>}
      {preview === undefined || preview.changes.length === 0 ? null : <Changes preview={preview} />}
      {findings.length === 0 ? null : (
        <section aria-labelledby="take-back-findings">
          <h3 className="head" id="take-back-findings">
            To look at
          </h3>
          <ul className="take-back-findings">
            {findings.map((one, at) => (
              <li key={`${one.place} ${at}`}>
                <strong>{one.place}</strong> {one.message} {one.meaning} {one.remedy}
              </li>
            ))}
          </ul>
        </section>
      )}
      {text === undefined ? null : (
        <button
          type="button"
          className="main-button"
          onClick={() => void take(looked, text).then(isTaken => (isTaken ? onTaken() : undefined))}
        >
          Take the changes
        </button>
      )}
    </>
  );
}

function Changes({ preview }: { preview: TakeBackPreview }) {
  return (
    <>
      <table className="data-table">
        <caption className="head caption">What it would change</caption>
        <thead>
          <tr>
            <th scope="col">Cell</th>
            <th scope="col">Figure</th>
            <th scope="col" className="number">
              Now
            </th>
            <th scope="col" className="number">
              New
            </th>
            <th scope="col">Unit</th>
            <th scope="col">Basis</th>
          </tr>
        </thead>
        <tbody>
          {preview.changes.map(one => (
            <tr key={one.cell}>
              <td>{one.cell}</td>
              <td>{one.title}</td>
              <td className="number">
                <Before figure={one.before} scenario={preview.scenario} />
              </td>
              <td className="number">{one.after}</td>
              <td>{one.unit}</td>
              <td>{one.basis}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <table className="data-table">
        <caption className="head caption">What that comes to</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col" className="number">
              Now
            </th>
            <th scope="col" className="number">
              With the changes
            </th>
          </tr>
        </thead>
        <tbody>
          {preview.results.map(one => (
            <tr key={one.title}>
              <td>{one.title}</td>
              <td className="number">
                <Before figure={one.before} scenario={preview.scenario} />
              </td>
              <td className="number">{one.after}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** A figure as it stands; it can be asked about while its scenario is the one shown. */
function Before({ figure, scenario }: { figure: KnownFigure; scenario: string }) {
  const shown = useWindow(({ scenario: id }) => id);
  return <Figure shown={shown === scenario ? figure : { text: figure.text }} />;
}

async function lookedThrough(file: File): Promise<Looked | undefined> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let letters = '';
  for (let at = 0; at < bytes.length; at += 8192)
    letters += String.fromCharCode(...bytes.subarray(at, at + 8192));
  const project = state().history?.project;
  const paper = valueOf(
    await host().takeBack({ name: file.name, base64: window.btoa(letters), text: await textNow() }),
  );
  return paper && { name: file.name, project, paper };
}

/** Puts the new text in place as one step, unless the document was changed since the paper was looked through. */
async function take({ name, project }: Looked, text: string): Promise<boolean> {
  if (state().history?.project !== project) {
    change({ status: `The project was changed since ${name} was looked through: choose the file again.` });
    return false;
  }
  const read = await engine().ask('read', { text });
  if (read.project === undefined) {
    change({ status: `${name} could not be taken: ${read.findings[0]?.message ?? 'it cannot be read'}` });
    return false;
  }
  edit(takeSections(read.project, `take back ${name}`));
  change({ status: `Taken back from ${name}. One step to undo.` });
  return true;
}
