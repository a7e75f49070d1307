import { chooseScenario, goTo, runCommand } from '../commands/run';
import { isEdited } from '../state/history';
import { change, useWindow } from '../state/store';
import { VIEW_GROUPS } from './view-table';
import { letterOf } from './letters';

/** The list of views, under the ship's name and the letters of the scenarios. */
export function ViewList() {
  const history = useWindow(window => window.history);
  const view = useWindow(window => window.view);
  const counts = useWindow(window => window.rows?.counts);
  return (
    <nav className="view-list" aria-label="Views">
      <Head />
      {VIEW_GROUPS.map(group => (
        <div key={group.title}>
          <h2 className="view-group" id={`group-${group.title}`}>
            {group.title}
          </h2>
          <ul aria-labelledby={`group-${group.title}`}>
            {group.views.map(item => (
              <li key={item.id}>
                <button
                  type="button"
                  className="view-item"
                  aria-current={history !== undefined && view === item.id ? 'page' : undefined}
                  disabled={history === undefined}
                  onClick={() => goTo(item.id)}
                >
                  {item.title}
                  <Count words={counts?.[item.id]} />
                </button>
              </li>
            ))}
          </ul>
        </div>
      ))}
      <div className="list-foot">
        <FootItem command="find" title="Find" keys="Ctrl K" />
        <FootItem command="help" title="Help" keys="F1" />
      </div>
    </nav>
  );
}

function Count({ words }: { words: string | undefined }) {
  return words === undefined ? null : <span className="count">{words}</span>;
}

function FootItem({ command, title, keys }: { command: string; title: string; keys: string }) {
  return (
    <button type="button" className="view-item" onClick={() => runCommand(command)}>
      {title}
      <span className="count">{keys}</span>
    </button>
  );
}

function Head() {
  const document = useWindow(window => window.document);
  const history = useWindow(window => window.history);
  const fileLine =
    document === undefined || history === undefined
      ? 'Reefwright'
      : `${document.name.replace('.reef.json', '')}${isEdited(history) ? ' · edited' : ''}`;
  return (
    <div>
      <p className="ship-name">{history?.project.vessel.name ?? 'No project open'}</p>
      <p className="file-line">{fileLine}</p>
      {history?.project.sample === true ? <p className="file-line accent">Sample, invented figures</p> : null}
      <button
        type="button"
        className="menu-button text-button"
        aria-haspopup="menu"
        onClick={() => change({ panel: 'menu' })}
      >
        Menu
      </button>
      {history === undefined ? <p className="scenario-title">No scenarios yet</p> : <Scenarios />}
    </div>
  );
}

function Scenarios() {
  const scenarios = useWindow(window => window.history?.project.scenarios);
  const chosen = useWindow(window => window.scenario);
  const isOnlyHere = useWindow(window => window.onlyHere);
  if (scenarios === undefined) return null;
  return (
    <>
      <div className="scenario-letters" role="group" aria-label="Scenario">
        {scenarios.map((scenario, at) => (
          <button
            key={scenario.id}
            type="button"
            className="letter"
            aria-pressed={scenario.id === chosen}
            aria-label={`Scenario ${letterOf(at)}, ${scenario.title}`}
            onClick={() => chooseScenario(scenario.id)}
          >
            {letterOf(at)}
          </button>
        ))}
      </div>
      <p className="scenario-title">{scenarios.find(one => one.id === chosen)?.title}</p>
      {scenarios.length < 2 ? null : (
        <p className="scenario-title quiet">
          Edits go to{' '}
          {isOnlyHere ? `${letterOf(scenarios.findIndex(one => one.id === chosen))} alone` : 'all scenarios'}
        </p>
      )}
      <button
        type="button"
        className="menu-button text-button"
        aria-haspopup="dialog"
        onClick={() => change({ panel: 'scenarios' })}
      >
        Scenarios
      </button>
    </>
  );
}
