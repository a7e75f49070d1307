import { useEffect, useState } from 'react';
import type { ListedDocument } from '../../../electron/channels';
import { host } from '../../host/bridge';
import { openDocument, openListed, openSample, startNew } from '../../state/files';
import { STARTS } from '../../words/starts';
import { JobPicture } from './job-picture';
import './first-run.css';

/** Nothing is open: the job as one picture, three starting points, and what was open before. */
export function FirstRun() {
  return (
    <>
      <h1 className="sentence">What do you need to put in front of people?</h1>
      <JobPicture />
      <div className="starts">
        {STARTS.map(start => (
          <section key={start.id} aria-labelledby={`start-${start.id}`}>
            <h2 className="serif start-title" id={`start-${start.id}`}>
              {start.title}
            </h2>
            <p className="quiet start-reader">{start.reader}</p>
            <h3>Have at hand</h3>
            <ul>
              {start.atHand.map(line => (
                <li key={line}>{line}</li>
              ))}
            </ul>
            <h3>You get</h3>
            <p className="start-gives">{start.gives}</p>
            <button type="button" className="main-button" onClick={() => void startNew(start.id)}>
              {start.action}
            </button>
          </section>
        ))}
      </div>
      <p className="start-others">
        <button type="button" className="text-button" onClick={openDocument}>
          Open a file
        </button>
        <button type="button" className="text-button" onClick={() => void openSample('wrenfield')}>
          Look at the sample ship
        </button>
        <span className="quiet">Invented ship, invented prices</span>
      </p>
      <Recent />
    </>
  );
}

function Recent() {
  const [recent, setRecent] = useState<readonly ListedDocument[]>([]);
  useEffect(() => {
    void host()
      .recentDocuments()
      .then(reply => {
        if (reply.ok) setRecent(reply.value);
      });
  }, []);
  if (recent.length === 0) return null;
  return (
    <div className="recent">
      <h2 className="head">Open before</h2>
      <ul>
        {recent.map(document => (
          <li key={document.id}>
            <button
              type="button"
              className="text-button"
              disabled={document.missing}
              onClick={() => void openListed(document.id)}
            >
              {document.name}
            </button>
            <span className="quiet">{document.missing ? 'no longer there' : document.folder}</span>
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="text-button quiet"
        onClick={() =>
          void host()
            .clearRecent()
            .then(() => setRecent([]))
        }
      >
        Clear this list
      </button>
    </div>
  );
}
