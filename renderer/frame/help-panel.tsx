import { shownKeys } from '../commands/keys';
import { COMMANDS, GRID_KEYS } from '../commands/table';
import { useWindow } from '../state/store';
import { GLOSSARY } from '../words/glossary';

/** Help: how the window is read, every key from the one table, and every trade term and abbreviation. */
export function HelpPanel() {
  const platform = useWindow(window => window.about?.platform ?? '');
  return (
    <div className="help">
      <p className="serif">
        Every figure answers the question why. Press it, or Enter on it, and the panel at the right shows how
        it was reached and where each number comes from.
      </p>
      <p className="serif">
        Your file on disk is either the last version you saved or the one you were saving, never a mixture.
        Unsaved edits older than five seconds can be recovered.
      </p>
      <h3 className="head">Keyboard</h3>
      <table className="data-table">
        <thead>
          <tr>
            <th scope="col">What it does</th>
            <th scope="col">Keys</th>
          </tr>
        </thead>
        <tbody>
          {COMMANDS.filter(command => command.keys.length > 0).map(command => (
            <tr key={command.id}>
              <td>{command.title}</td>
              <td>{command.keys.map(keys => shownKeys(keys, platform)).join(' or ')}</td>
            </tr>
          ))}
          {GRID_KEYS.map(row => (
            <tr key={row.keys}>
              <td>In a table: {row.title}</td>
              <td>{row.keys}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3 className="head">Words</h3>
      <dl className="glossary">
        {GLOSSARY.map(entry => (
          <div key={entry.term}>
            <dt>{entry.term}</dt>
            <dd>{entry.means}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
