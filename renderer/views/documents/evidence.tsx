import { addAttachment } from '../../edits/lists';
import { FileChoice } from '../../parts/file-choice';
import { DataTable } from '../../parts/grid/data-table';
import { useOpened } from '../../state/opened';
import { change } from '../../state/store';
import { edit } from '../../state/working-out';

/** Files that prove a figure. Their name and check sum are kept with the project; the files stay where they are. */
export function Evidence() {
  const view = useOpened('evidence');
  if (view === undefined) return null;
  return (
    <>
      {view.attachments.rows.length === 0 ? (
        <div className="empty">
          <p>
            Quotes, survey reports and permits are named here, so that anyone can see what a figure rests on.
          </p>
        </div>
      ) : (
        <DataTable table={view.attachments} isCaptionUnseen />
      )}
      <FileChoice
        className="file-choice evidence-choice"
        title="Name a file as evidence"
        note="Its name and check sum are kept; the file itself stays where it is."
        onFile={file => void attach(file)}
      />
    </>
  );
}

async function attach(file: File): Promise<void> {
  const digest = await window.crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  const sha256 = [...new Uint8Array(digest)].map(byte => byte.toString(16).padStart(2, '0')).join('');
  edit(addAttachment(file.name, sha256));
  change({ status: `${file.name} is named as evidence.` });
}
